import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import type { Raster } from '../../../core/raster/raster.ts';
import { readUprightPhoto, WORKING_SIDE_PX } from '../../../server/intake/read-upright-photo.ts';
import { orientedHeic } from '../fixtures/oriented-heic.ts';
import { turnedHeic } from '../fixtures/photos.ts';
import { drawPlant } from '../fixtures/synthetic-plant.ts';

/** Four quarters of different colours: left-top red, right-top green, left-bottom blue, right-bottom white. */
function quarters(width: number, height: number): Sharp {
  const colours = [
    [230, 20, 20],
    [20, 230, 20],
    [20, 20, 230],
    [240, 240, 240],
  ];
  const pixels = new Uint8Array(width * height * 3);
  for (let at = 0; at < width * height; at += 1) {
    const right = at % width >= width / 2 ? 1 : 0;
    const bottom = at >= (width * height) / 2 ? 2 : 0;
    pixels.set(colours[right + bottom] ?? [], 3 * at);
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } });
}

/** Names of the colours in the four quarters' middles, row by row. */
function seen({ width, height, data }: Raster): string {
  return [
    [0.25, 0.25],
    [0.75, 0.25],
    [0.25, 0.75],
    [0.75, 0.75],
  ]
    .map(([x = 0, y = 0]) => {
      const at = 3 * (Math.floor(y * height) * width + Math.floor(x * width));
      const [red = 0, green = 0, blue = 0] = data.subarray(at, at + 3);
      if (Math.min(red, green, blue) > 200) return 'white';
      return red > Math.max(green, blue) ? 'red' : green > blue ? 'green' : 'blue';
    })
    .join(' ');
}

/** How the upright picture is turned and mirrored to be stored under each orientation (EXIF 2.32, table 6); sharp mirrors first. */
const STORED_AS: Record<number, (upright: Sharp) => Sharp> = {
  1: (upright) => upright,
  2: (upright) => upright.flop(),
  3: (upright) => upright.rotate(180),
  4: (upright) => upright.flip(),
  5: (upright) => upright.flop().rotate(270),
  6: (upright) => upright.rotate(270),
  7: (upright) => upright.flop().rotate(90),
  8: (upright) => upright.rotate(90),
};

describe('reading a photo upright', () => {
  for (const [orientation, stored] of Object.entries(STORED_AS)) {
    it(`turns a photo of EXIF orientation ${orientation} the right way up`, async () => {
      const turned = await stored(quarters(480, 320)).png().toBuffer();
      const bytes = await sharp(turned)
        .withMetadata({ orientation: Number(orientation) })
        .jpeg({ quality: 95 })
        .toBuffer();
      const photo = await readUprightPhoto(bytes);
      expect([photo.widthPx, photo.heightPx]).toEqual([480, 320]);
      expect(seen(photo.raster)).toBe('red green blue white');
    });
  }

  it('leaves a HEIC as libheif turned it, though its EXIF still says turn', async () => {
    const photo = await readUprightPhoto(turnedHeic());
    expect([photo.widthPx, photo.heightPx]).toEqual([480, 640]);
    const upright = await drawPlant({ width: 480, height: 640 }).raw().toBuffer();
    const off = upright.reduce((sum, value, at) => sum + Math.abs(value - (photo.raster.data[at] ?? 0)), 0);
    // Mean difference a byte: coding noise is 3, a wrong turn over 20.
    expect(off / upright.length).toBeLessThan(6);
  });

  for (const quarterTurns of [0, 1, 2, 3] as const) {
    for (const mirror of [null, 'top-bottom', 'left-right'] as const) {
      const how = `${quarterTurns} quarter turns${mirror ? `, mirrored ${mirror}` : ''}`;
      it(`stands a HEIC of ${how} upright exactly once`, async () => {
        const { raster: stored } = await readUprightPhoto(orientedHeic(0, null));
        const { raster } = await readUprightPhoto(orientedHeic(quarterTurns, mirror));
        const turned = sharp(stored.data, { raw: { ...stored, channels: 3 } }).rotate(-90 * quarterTurns);
        const plain = await turned.raw().toBuffer({ resolveWithObject: true });
        const shape = { width: plain.info.width, height: plain.info.height, channels: 3 } as const;
        const picture = sharp(plain.data, { raw: shape });
        if (mirror === 'top-bottom') picture.flip();
        if (mirror === 'left-right') picture.flop();
        const expected = await picture.raw().toBuffer();
        expect([raster.width, raster.height]).toEqual([shape.width, shape.height]);
        const off = expected.reduce((sum, value, at) => sum + Math.abs(value - (raster.data[at] ?? 0)), 0);
        console.info(`HEIC, ${how}: ${(off / expected.length).toFixed(2)} of 255 off a byte`);
        // Colour is kept at half the resolution, so a turn moves it by half a pixel; a wrong turn is over 20.
        expect(off / expected.length).toBeLessThan(3);
      });
    }
  }

  it('hands on a raster of at most the working side, with the full size beside it', async () => {
    const bytes = await quarters(2600, 2000).jpeg().toBuffer();
    const photo = await readUprightPhoto(bytes);
    expect([photo.widthPx, photo.heightPx]).toEqual([2600, 2000]);
    expect(photo.raster.width).toBe(WORKING_SIDE_PX);
    expect(photo.raster.height).toBe(1231);
    expect(photo.raster.data.length).toBe(3 * photo.raster.width * photo.raster.height);
    expect(seen(photo.raster)).toBe('red green blue white');
  });

  it('never enlarges a small photo', async () => {
    const photo = await readUprightPhoto(await quarters(300, 240).png().toBuffer());
    expect([photo.raster.width, photo.raster.height]).toEqual([300, 240]);
  });

  it.each([
    ['CMYK JPEG', () => quarters(400, 300).toColourspace('cmyk').jpeg({ quality: 95 })],
    ['16-bit PNG', () => quarters(400, 300).toColourspace('rgb16').png()],
    ['palette PNG', () => quarters(400, 300).png({ palette: true })],
    ['WebP', () => quarters(400, 300).webp({ quality: 95 })],
  ])('reads a %s as 8-bit sRGB', async (_, picture) => {
    const photo = await readUprightPhoto(await picture().toBuffer());
    expect(photo.raster.data.length).toBe(3 * 400 * 300);
    expect(seen(photo.raster)).toBe('red green blue white');
  });

  it('takes transparent parts as white', async () => {
    const clear = await sharp({
      create: { width: 300, height: 300, channels: 4, background: { r: 0, g: 90, b: 0, alpha: 0 } },
    })
      .png()
      .toBuffer();
    const photo = await readUprightPhoto(clear);
    expect([...photo.raster.data.subarray(0, 3)]).toEqual([255, 255, 255]);
  });

  it('reads a wide-gamut photo by its profile', async () => {
    // The sRGB green 0/255/0 is about 117/251/76 in Display P3 (CSS Color 4, worked conversion).
    const p3 = await sharp({ create: { width: 300, height: 300, channels: 3, background: '#00ff00' } })
      .withIccProfile('p3')
      .png()
      .toBuffer();
    const photo = await readUprightPhoto(p3);
    const [red = 0, green = 0, blue = 0] = photo.raster.data;
    expect(red).toBeLessThan(20);
    expect(green).toBeGreaterThan(245);
    expect(blue).toBeLessThan(20);
  });
});
