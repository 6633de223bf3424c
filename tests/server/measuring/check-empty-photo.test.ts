import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { checkEmptyPhoto } from '../../../server/measuring/check-empty-photo.ts';
import type { StandSheet } from '../../../server/schemas/stand.ts';
import type { EmptyCheck } from '../../../server/store/stand-versions.ts';
import { photographSheet, type SheetScene } from '../../core/stand/sheet/photographed-sheet.ts';
import { temporaryFolder } from '../fixtures/open-bench.ts';

const ON_BACKDROP: StandSheet = { paper: 'A4', place: 'backdrop', plantInFrontMm: 150 };
/** What a camera that tells 26 mm sees on 1600 × 1200 px: 26 ÷ 43.267 of the diagonal of 2000 px. */
const FOCAL_PX = (26 / Math.hypot(36, 24)) * 2000;

async function looked(picture: Sharp, sheet: StandSheet | null = null): Promise<EmptyCheck> {
  const path = join(temporaryFolder(), 'empty.jpg');
  const withFocal = picture.withExif({ IFD2: { FocalLengthIn35mmFilm: '26' } });
  writeFileSync(path, await withFocal.jpeg({ quality: 95 }).toBuffer());
  return checkEmptyPhoto({ path, sheet });
}

function withSheet(scene: Partial<SheetScene> = {}): Sharp {
  const { width, height, data } = photographSheet({ focalPx: FOCAL_PX, ...scene }).raster;
  return sharp(data, { raw: { width, height, channels: 3 } });
}

const plain = (background: string) =>
  sharp({ create: { width: 1600, height: 1200, channels: 3, background } });

describe('an empty photo', () => {
  it('with the sheet in full sight tells all rings, the camera’s distance to the pot and the greys', async () => {
    const { check, reading } = await looked(withSheet({ distanceMm: 1500, tiltDeg: 8 }), ON_BACKDROP);
    expect(check).toEqual({
      good: true,
      brightness: 'good',
      sharpness: 'good',
      words: 'Light and sharpness are good.',
    });
    expect(reading).toMatchObject({ marksFound: 5, marksOfSheet: 5, greyFound: true });
    // The pot stands 150 mm nearer than the sheet; 1 % as asked of the scale.
    expect(Math.abs((reading?.cameraDistanceMm ?? 0) / 1350 - 1)).toBeLessThan(0.01);
    expect(Math.abs((reading?.mmPerPxAtSheet ?? 0) / (1500 / FOCAL_PX) - 1)).toBeLessThan(0.01);
    expect(reading?.words).toBe(
      'All 5 rings of the stand sheet are in sight. The camera stands about 1.35 m from the pot.',
    );
  });

  it('gives the rings where they stand in the photo as it was taken', async () => {
    const scene = photographSheet({ focalPx: FOCAL_PX });
    const large = withSheet().resize(3200, 2400, { kernel: 'cubic' });
    const { reading } = await looked(large, ON_BACKDROP);
    const ids = ['top-left', 'top-right', 'right', 'bottom-left', 'bottom-right'];
    for (const id of ids) {
      const [x, y] = scene.centreOf(id);
      const nearest = Math.min(
        ...(reading?.marksPx ?? []).map(([px, py]) => Math.hypot(px - 2 * x, py - 2 * y)),
      );
      expect(nearest).toBeLessThan(2);
    }
  });

  it('says which rings are missing, and what to do when there are too few or none', async () => {
    const hidden = { centreMm: [30, 40], radiusMm: 60 } as const;
    const four = await looked(withSheet({ leaves: [hidden] }), ON_BACKDROP);
    expect(four.reading?.marksFound).toBe(4);
    expect(four.reading?.words).toContain('4 of the stand sheet’s 5 rings were seen; that is enough.');
    const none = await looked(plain('#8a8a80'), ON_BACKDROP);
    expect(none.reading).toMatchObject({ marksFound: 0, mmPerPxAtSheet: null, cameraDistanceMm: null });
    expect(none.reading?.words).toContain('Bring the sheet into the picture');
    const other = await looked(withSheet({ paper: 'Letter' }), ON_BACKDROP);
    expect(other.reading?.words).toContain('Say whether the sheet was printed on A4 or Letter');
  });

  it('notices a sheet that the stand was not told of', async () => {
    const { reading } = await looked(withSheet());
    expect(reading?.words).toBe(
      '5 rings of a stand sheet are in sight. Say which paper it is and where it is fixed, and it gives frame and scale.',
    );
    expect((await looked(plain('#8a8a80'))).reading).toBeNull();
  });

  it.each([
    ['nearly black', plain('#050505'), 'too-dark', 'Give the place more light'],
    ['burnt out', plain('#fefefe'), 'too-bright', 'Expose a little less'],
  ] as const)('that is %s should be taken again', async (_, picture, brightness, advice) => {
    const { check } = await looked(picture);
    expect(check).toMatchObject({ good: false, brightness });
    expect(check.words).toContain(advice);
  });

  it('that is blurred should be taken again; before a bare wall sharpness is not known', async () => {
    const { check } = await looked(withSheet({ blurPx: 14 }), ON_BACKDROP);
    expect(check).toMatchObject({ good: false, sharpness: 'blurred' });
    expect(check.words).toContain('Rest the camera on something firm');
    const wall = await looked(plain('#8a8a80'));
    expect(wall.check).toMatchObject({ good: true, sharpness: 'unknown' });
  });
});
