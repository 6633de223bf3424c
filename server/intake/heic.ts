import { MOST_PIXELS } from './most-pixels.ts';

/** The picture has more pixels than the intake unpacks; `checkPhoto` words it for the grower. */
export class HeicTooLarge extends Error {}

/**
 * Unpacks the main picture of a HEIC file to RGBA. libheif turns and mirrors it as the file asks.
 *
 * The decoder (WebAssembly) is loaded on the first HEIC only and works on the calling thread: call this in a
 * worker. Rejects when the file holds no readable picture; use `isWholeFile` first, because half a file
 * decodes to a half-grey picture without an error.
 */
export async function decodeHeic(
  bytes: Uint8Array,
): Promise<{ width: number; height: number; data: Uint8Array }> {
  const { default: heic } = await import('heic-decode');
  const pictures = await heic.all({ buffer: bytes });
  try {
    const main = pictures[0];
    if (!main) throw new TypeError('Expected a picture in the HEIC file but found none');
    if (main.width * main.height > MOST_PIXELS) throw new HeicTooLarge();
    const { width, height, data } = await quietly(() => main.decode());
    return { width, height, data: new Uint8Array(data.buffer, data.byteOffset, data.byteLength) };
  } finally {
    pictures.dispose();
  }
}

/** libheif prints its faults to the console, where they would fall among the reports of the command line. */
async function quietly<T>(work: () => Promise<T>): Promise<T> {
  const { log } = console;
  console.log = () => {};
  try {
    return await work();
  } finally {
    console.log = log;
  }
}

/** How the EXIF item starts (ISO/IEC 23008-12, annex A): the offset of the TIFF header, then the header. */
const EXIF_STARTS = ['Exif\0\0MM\0*', 'Exif\0\0II*\0', '\0\0\0\0MM\0*', '\0\0\0\0II*\0'] as const;

/** The EXIF block of a HEIC file, from its TIFF header on; `null` when there is none. */
export function heicExif(bytes: Uint8Array): Uint8Array | null {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (const start of EXIF_STARTS) {
    const at = file.indexOf(start, 0, 'latin1');
    if (at >= 0) return file.subarray(at + start.length - 4);
  }
  return null;
}
