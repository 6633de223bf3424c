import { MOST_PIXELS } from './sharp-door.ts';

/** The picture has more pixels than the intake unpacks; `checkPhoto` words it for the grower. */
export class HeicTooLarge extends Error {}

/**
 * Unpacks the main picture of a HEIC file to RGBA. libheif turns and mirrors it as the file asks.
 *
 * The decoder (WebAssembly) is loaded on the first HEIC only and works on the calling thread: call this in a
 * worker. Rejects when the file holds no readable picture; use `heicIsWhole` first, because half a file
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
    const { width, height, data } = await main.decode();
    return { width, height, data: new Uint8Array(data.buffer, data.byteOffset, data.byteLength) };
  } finally {
    pictures.dispose();
  }
}

/** Whether every top-level box of the file (ISO/IEC 14496-12, §4.2) ends inside it: false for a cut-off file. */
export function heicIsWhole(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let offset = 0;
  while (offset < bytes.length) {
    if (offset + 8 > bytes.length) return false;
    let size = view.getUint32(offset);
    if (size === 0) return true; // The last box runs to the end of the file.
    if (size === 1) {
      if (offset + 16 > bytes.length) return false;
      size = Number(view.getBigUint64(offset + 8));
    }
    if (size < 8) return false;
    offset += size;
  }
  return offset === bytes.length;
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
