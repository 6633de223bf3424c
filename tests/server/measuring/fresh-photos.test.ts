import { expect, it } from 'vitest';
import type { CheckedPhoto } from '../../../server/intake/check-photo.ts';
import { freshPhotos } from '../../../server/measuring/fresh-photos.ts';

function photo(widthPx: number): CheckedPhoto {
  const raster = { width: 1, height: 1, data: new Uint8Array(3) };
  return {
    ok: true,
    format: 'jpeg',
    upright: { raster, widthPx, heightPx: 1 },
    takenAt: null,
    exif: null,
    focalLengthPx: null,
    notes: [],
  };
}

it('gives a photo that came in just now away once', () => {
  const fresh = freshPhotos();
  const one = photo(1);
  fresh.hold('one', one);
  expect(fresh.take('one')).toBe(one);
  expect(fresh.take('one')).toBeUndefined();
});

it('holds the newest three', () => {
  const fresh = freshPhotos();
  for (const [at, name] of ['a', 'b', 'c', 'd'].entries()) fresh.hold(name, photo(at));
  expect(fresh.take('a')).toBeUndefined();
  expect(fresh.take('b')?.upright.widthPx).toBe(1);
  expect(fresh.take('d')?.upright.widthPx).toBe(3);
});
