import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { checkPhoto } from '../../../server/intake/check-photo.ts';
import { focalLengthPx } from '../../../server/intake/focal-length.ts';
import { drawPlant } from '../fixtures/synthetic-plant.ts';

/** A photo with a 35 mm equivalent focal length; the size goes into its EXIF block too. */
async function photoBytes(
  equivalentMm: string | null,
  {
    width = 4000,
    height = 3000,
    orientation = 1,
  }: { width?: number; height?: number; orientation?: number } = {},
): Promise<Buffer> {
  return sharp({ create: { width, height, channels: 3, background: '#8a8a80' } })
    .withExif({
      IFD0: { Orientation: String(orientation) },
      IFD2: {
        ...(equivalentMm === null ? {} : { FocalLengthIn35mmFilm: equivalentMm }),
      },
    })
    .jpeg()
    .toBuffer();
}

async function focalLength(...photo: Parameters<typeof photoBytes>): Promise<number | null> {
  const checked = await checkPhoto(await photoBytes(...photo));
  if (!checked.ok) throw new Error(checked.hint);
  return checked.focalLengthPx;
}

describe('the focal length', () => {
  it('is the film’s over the film’s diagonal, in px of the measured copy', async () => {
    // 26 mm on a 4 : 3 phone; the copy is 1600 × 1200 px, its diagonal 2000 px; 36 × 24 mm film, 43.267 mm.
    expect(await focalLength('26')).toBeCloseTo((26 / 43.2666) * 2000, 1);
  });

  it('gives the field of view that a 50 mm lens has on film', async () => {
    // A 3 : 2 picture has the film's shape: 39.6° across (2·atan(18 ÷ 50)), as lens tables give it.
    const focal = (await focalLength('50', { width: 3000, height: 2000 })) as number;
    expect((2 * Math.atan(800 / focal) * 180) / Math.PI).toBeCloseTo(39.6, 1);
  });

  it('is the same whichever way the camera was held', async () => {
    expect(await focalLength('26', { orientation: 6 })).toBe(await focalLength('26'));
  });

  it('is unknown when the camera did not tell it, or told nonsense', async () => {
    expect(await focalLength(null)).toBeNull();
    expect(await focalLength('0')).toBeNull();
    expect(await focalLength('65535')).toBeNull();
    const checked = await checkPhoto(await drawPlant().jpeg().toBuffer());
    expect(checked).toMatchObject({ ok: true, focalLengthPx: null });
  });

  it('is unknown for a picture that was cropped since, and known for one that was only reduced', async () => {
    // The camera's block says 4000 × 3000 px.
    const { exif } = await sharp(await photoBytes('26')).metadata();
    const seen = (width: number, height: number) =>
      focalLengthPx(exif, {
        raster: { width, height, data: new Uint8Array(0) },
        widthPx: width,
        heightPx: height,
      });
    expect(seen(1500, 1500)).toBeNull();
    expect(seen(1600, 900)).toBeNull();
    expect(seen(1200, 900)).toBeCloseTo((26 / 43.2666) * 1500, 1);
    expect(seen(900, 1200)).toBeCloseTo((26 / 43.2666) * 1500, 1);
  });
});
