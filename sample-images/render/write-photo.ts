import { writeFile } from 'node:fs/promises';
import sharp from 'sharp';

/** 8-bit pixels: three bytes a px of a photo, one of a mask. */
interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

const JPEG_QUALITY = 85;

/**
 * Encodes a photo as JPEG with the day's EXIF. `localTime` is `YYYY:MM:DD HH:MM:SS`, without a zone, as cameras
 * write it. With `storedTurned` the pixels lie a quarter turn anticlockwise and Orientation 6 tells to turn back.
 */
export async function encodePhoto(photo: Pixels, localTime: string, storedTurned: boolean): Promise<Buffer> {
  const raw = sharp(photo.data, { raw: { width: photo.width, height: photo.height, channels: 3 } });
  return raw
    .rotate(storedTurned ? 270 : 0)
    .withExif({
      IFD0: { Software: 'Rondure sample renderer', DateTime: localTime },
      IFD2: { DateTimeOriginal: localTime, DateTimeDigitized: localTime },
    })
    .withMetadata({ orientation: storedTurned ? 6 : 1 })
    .jpeg({ quality: JPEG_QUALITY, chromaSubsampling: '4:2:0', mozjpeg: false })
    .toBuffer();
}

/** Encodes a yes/no mask as a PNG of 0 and 255. */
export async function encodeMask(mask: Pixels): Promise<Buffer> {
  const grey = mask.data.map((inside) => inside * 255);
  return sharp(grey, { raw: { width: mask.width, height: mask.height, channels: 1 } })
    .toColourspace('b-w')
    .png({ compressionLevel: 9, palette: false })
    .toBuffer();
}

/** Writes an object as JSON, one line for each of its own entries and each item of its lists. */
export async function writeJson(path: string, value: Record<string, unknown>): Promise<void> {
  const lines = Object.entries(value).map(([name, entry]) => {
    const items = Array.isArray(entry) ? entry.map((item) => `\n  ${JSON.stringify(item)}`) : null;
    return ` ${JSON.stringify(name)}: ${items ? `[${items.join(',')}\n ]` : JSON.stringify(entry)}`;
  });
  await writeFile(path, `{\n${lines.join(',\n')}\n}\n`);
}
