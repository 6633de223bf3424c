import { describe, expect, it } from 'vitest';
import { checkPhoto } from '../../server/intake/check-photo.ts';
import { MOST_PIXELS } from '../../server/intake/most-pixels.ts';
import { MOST_BYTES, REFUSAL_REASONS, refusal } from '../../server/intake/refused-photo.ts';
import { compressedPicture } from '../../server/intake/sharp-door.ts';
import { turnedHeic } from '../server/fixtures/photos.ts';
import { drawPlant } from '../server/fixtures/synthetic-plant.ts';
import { jpegBomb, pngBomb, webpBomb } from './decompression-bombs.ts';

const megabytes = (bytes: number) => (bytes / 1e6).toFixed(2);

/** The same file with everything behind its header made unreadable: refused alike, it was refused from the header. */
function withoutPixels(file: Buffer, from: number): Buffer {
  return Buffer.from(file).fill(0xa5, from, file.length - 12);
}

const BOMBS = [
  ['PNG', () => pngBomb(32_000), 45],
  ['JPEG', () => jpegBomb(16_384), 180],
  ['WebP', () => webpBomb(16_383, 1_000_000), 36],
] as const;

describe('a decompression bomb of a megabyte', () => {
  it.each(BOMBS)('as %s is refused by its header, without being unpacked', async (kind, make, pixelsFrom) => {
    const bomb = make();
    await checkPhoto(webpBomb(300)); // The library is loaded.
    const before = process.memoryUsage.rss();
    const start = performance.now();
    const answer = await checkPhoto(bomb);
    const tookMs = performance.now() - start;
    expect(answer).toEqual(refusal('too-many-pixels'));
    expect(await checkPhoto(withoutPixels(bomb, pixelsFrom))).toEqual(answer);
    const grew = megabytes(process.memoryUsage.rss() - before);
    console.info(
      `${kind} bomb of ${megabytes(bomb.length)} MB: refused in ${tookMs.toFixed(1)} ms, memory grew by ${grew} MB`,
    );
  });

  it.each([
    ['PNG', pngBomb(240)],
    ['JPEG', jpegBomb(240)],
    ['WebP', webpBomb(240)],
  ])('as %s is a sound picture when small, so only its size is refused', async (_, small) => {
    expect(await checkPhoto(small)).toMatchObject({ ok: true, notes: [], upright: { widthPx: 240 } });
  });

  it('as HEIC is refused by the size that it claims', async () => {
    const heic = turnedHeic();
    // ISO/IEC 23008-12, 6.5.3: version and flags, width, height.
    for (let at = heic.indexOf('ispe'); at >= 0; at = heic.indexOf('ispe', at + 4)) {
      heic.writeUInt32BE(16_000, at + 8);
      heic.writeUInt32BE(16_000, at + 12);
    }
    expect(await checkPhoto(heic)).toMatchObject({ ok: false });
  });
});

describe('the limits', () => {
  it('are 64 megapixels a picture and 40 MB a file', async () => {
    expect([MOST_PIXELS, MOST_BYTES]).toEqual([64e6, 40 * 1024 ** 2]);
    expect(await checkPhoto(pngBomb(8001))).toEqual(refusal('too-many-pixels'));
    expect(await checkPhoto(jpegBomb(8000))).toMatchObject({ ok: true });
    expect(await checkPhoto(new Uint8Array(MOST_BYTES + 1))).toEqual(refusal('too-many-bytes'));
  });

  it('have a sentence each that says what to do', () => {
    for (const reason of REFUSAL_REASONS) {
      if (reason === 'not-a-photo' || reason === 'too-small') continue;
      expect(refusal(reason).hint).toMatch(/^[A-Z].{10,}\b(Send|Copy|send)\b.*\.$/);
    }
  });
});

describe('the door to the decoders', () => {
  const plant = () => drawPlant({ width: 300, height: 300 });
  it.each([
    ['GIF', () => plant().gif().toBuffer()],
    ['TIFF', () => plant().tiff().toBuffer()],
    ['AVIF', () => plant().avif({ effort: 0 }).toBuffer()],
    ['SVG', () => Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="300" height="300"/>')],
    ['PDF', () => Buffer.from('%PDF-1.4\n1 0 obj<</Type/Catalog>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF')],
    ['HTML', () => Buffer.from('<!doctype html><title>x</title>')],
    ['PPM', () => Buffer.concat([Buffer.from('P6 300 300 255\n'), Buffer.alloc(270_000)])],
    ['HEIC', () => turnedHeic()],
  ])('opens to three formats and not to %s', async (_, bytes) => {
    await expect(compressedPicture(await bytes()).metadata()).rejects.toThrow(/unsupported image format/);
  });

  it.each([
    ['jpeg', () => plant().jpeg().toBuffer()],
    ['png', () => plant().png().toBuffer()],
    ['webp', () => plant().webp().toBuffer()],
  ])('opens to %s', async (format, bytes) => {
    expect((await compressedPicture(await bytes()).metadata()).format).toBe(format);
  });
});
