import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { checkPhoto } from './check-photo.ts';
import { rasterToJpeg } from './encode-picture.ts';
import type { PhotoFormat } from './photo-format.ts';
import type { RefusedPhoto } from './refused-photo.ts';
import type { TakenAt } from './taken-at.ts';

/** A file that may become a photo of the store, with its upright copy for the screen. */
export interface ReceivedPhoto {
  readonly ok: true;
  readonly sha256: string;
  readonly format: PhotoFormat;
  readonly byteCount: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly takenAt: TakenAt | null;
  /** Upright JPEG of at most 1600 px on the longer side, without camera data. */
  readonly picture: Uint8Array;
}

/** Reads a file from outside, wholly: what comes back `ok` can be unpacked, named and shown. */
export async function receivePhoto(path: string): Promise<ReceivedPhoto | RefusedPhoto> {
  const bytes = await readFile(path);
  const checked = await checkPhoto(bytes);
  if (!checked.ok) return checked;
  const { upright } = checked;
  return {
    ok: true,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    format: checked.format,
    byteCount: bytes.length,
    widthPx: upright.widthPx,
    heightPx: upright.heightPx,
    takenAt: checked.takenAt,
    picture: await rasterToJpeg(upright.raster),
  };
}
