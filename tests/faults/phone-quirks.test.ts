import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { checkPhoto } from '../../server/intake/check-photo.ts';
import { jpegEnd } from '../../server/intake/jpeg-end.ts';
import { refusal } from '../../server/intake/refused-photo.ts';
import { cameraJpeg, plantJpeg } from '../server/fixtures/photos.ts';
import { drawPlant } from '../server/fixtures/synthetic-plant.ts';

const END = Buffer.from([0xff, 0xd9]);
const NO_END = 'The file lacks its end mark, as some cameras leave it out; the picture itself is whole.';
const MORE_BEHIND =
  'The file holds more behind the picture, as phones add a film or a second picture; only the picture was measured.';
const UNUSUAL = 'The file is written in an unusual way; the picture could be read all the same.';
const ODD_PROFILE =
  'The picture’s colour profile cannot be read; its colours were taken as ordinary ones (sRGB).';

const progressive = () => drawPlant({ width: 640, height: 480 }).jpeg({ progressive: true }).toBuffer();
async function withProfile(spoil: (file: Buffer, profileAt: number) => void): Promise<Buffer> {
  const file = await drawPlant({ width: 640, height: 480 }).withIccProfile('p3').jpeg().toBuffer();
  // The segment's name, its number and count, then the profile (ICC.1:2022, B.4).
  spoil(file, file.indexOf('ICC_PROFILE\0') + 14);
  return file;
}

describe('a phone’s habit becomes a note', () => {
  it.each([
    ['a missing end mark', async () => (await plantJpeg()).subarray(0, -2), NO_END],
    ['a missing end mark of a progressive JPEG', async () => (await progressive()).subarray(0, -2), NO_END],
    [
      'a film behind the picture',
      async () => Buffer.concat([await plantJpeg(), Buffer.alloc(90_000, 7)]),
      MORE_BEHIND,
    ],
    [
      'a second picture behind it',
      async () => Buffer.concat([await plantJpeg(1), await plantJpeg(2)]),
      MORE_BEHIND,
    ],
    ['padding before the end mark', async () => padded(await progressive()), UNUSUAL],
    [
      'a profile without signature',
      () => withProfile((file, at) => file.fill(0, at + 36, at + 40)),
      ODD_PROFILE,
    ],
    [
      'a profile whose tags lie outside',
      () => withProfile((file, at) => file.fill(0x41, at + 132, at + 200)),
      ODD_PROFILE,
    ],
  ])('%s', async (_, bytes, note) => {
    const plain = await checkPhoto(await plantJpeg());
    const checked = await checkPhoto(await bytes());
    if (!checked.ok || !plain.ok) throw new Error('refused');
    expect(checked.notes).toEqual([note]);
    expect(checked.upright.raster.data.length).toBe(plain.upright.raster.data.length);
    console.info(`${_}: read, with a note`);
  });

  function padded(jpeg: Buffer): Buffer {
    return Buffer.concat([jpeg.subarray(0, -2), Buffer.alloc(40), END]);
  }

  it('reads the very pixels of the photo without the habit', async () => {
    const jpeg = await plantJpeg();
    const whole = await checkPhoto(jpeg);
    for (const odd of [jpeg.subarray(0, -2), Buffer.concat([jpeg, Buffer.alloc(999, 1)])]) {
      const checked = await checkPhoto(odd);
      expect(
        checked.ok && whole.ok && Buffer.compare(checked.upright.raster.data, whole.upright.raster.data),
      ).toBe(0);
    }
  });

  it('leaves an ordinary photo without a note', async () => {
    const files = [
      await plantJpeg(),
      await progressive(),
      await cameraJpeg('2026:05:30 09:00:00', { gps: true }),
    ];
    files.push(
      await withProfile(() => {}),
      await sharp(await plantJpeg())
        .webp()
        .toBuffer(),
    );
    for (const file of files) expect(await checkPhoto(file)).toMatchObject({ ok: true, notes: [] });
  });
});

describe('missing pixels', () => {
  it.each([
    ['half a JPEG', 0.5],
    ['a JPEG short of its last tenth', 0.9],
    ['a JPEG short of its last 1 %', 0.99],
  ])('of %s are no habit, also when its end was put right', async (_, share) => {
    for (const jpeg of [await plantJpeg(), await progressive()]) {
      const part = jpeg.subarray(0, Math.floor(share * jpeg.length));
      expect(await checkPhoto(part)).toEqual(refusal('cut-off'));
      expect(await checkPhoto(Buffer.concat([part, END]))).toEqual(refusal('cut-off'));
    }
  });
});

describe('the end of a JPEG', () => {
  it('is the picture’s, not that of a thumbnail inside it', async () => {
    const jpeg = await plantJpeg();
    const thumbnail = await drawPlant({ width: 60, height: 40 }).jpeg().toBuffer();
    const head = Buffer.from([0xff, 0xe1, (thumbnail.length + 2) >> 8, (thumbnail.length + 2) & 0xff]);
    const file = Buffer.concat([jpeg.subarray(0, 2), head, thumbnail, jpeg.subarray(2)]);
    expect(jpegEnd(file)).toBe(file.length);
    expect(jpegEnd(Buffer.concat([file, Buffer.from('behind')]))).toBe(file.length);
    expect(jpegEnd(file.subarray(0, -2))).toBeNull();
  });

  it('is found in any file, or told to be missing', () => {
    for (const bytes of [
      [],
      [0xff],
      [0xff, 0xd8],
      [0xff, 0xd8, 0xff],
      [0xff, 0xd8, 0xff, 0xda, 0xff, 0xff],
    ]) {
      expect(jpegEnd(Uint8Array.from(bytes))).toBeNull();
    }
    expect(jpegEnd(Uint8Array.from([0xff, 0xd8, 0xff, 0xff, 0xd9]))).toBe(5);
  });
});
