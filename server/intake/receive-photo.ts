import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { type CheckedPhoto, checkPhoto } from './check-photo.ts';
import { rasterToJpeg } from './encode-picture.ts';
import type { PhotoFormat } from './photo-format.ts';
import { type RefusedPhoto, refusal } from './refused-photo.ts';
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
  /** As it was unpacked, to be measured. */
  readonly checked: CheckedPhoto;
}

/** A file from outside, and what its sender has told of it. */
export interface ArrivedFile {
  readonly path: string;
  /** Hexadecimal; `null` or left out when it was not told, as is the length. */
  readonly sha256?: string | null;
  readonly byteCount?: number | null;
}

/** Reads a file from outside, wholly: what comes back `ok` is what was sent, and can be unpacked, named and shown. */
export async function receivePhoto(file: ArrivedFile): Promise<ReceivedPhoto | RefusedPhoto> {
  const bytes = await readFile(file.path);
  // The decoder has threads of its own; the fingerprint is reckoned meanwhile.
  const checking = checkPhoto(bytes);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const isAsSent =
    (file.byteCount ?? bytes.length) === bytes.length && (file.sha256 ?? sha256).toLowerCase() === sha256;
  const checked = await checking;
  if (!isAsSent) return refusal('altered');
  if (!checked.ok) return checked;
  const { upright } = checked;
  return {
    ok: true,
    sha256,
    format: checked.format,
    byteCount: bytes.length,
    widthPx: upright.widthPx,
    heightPx: upright.heightPx,
    takenAt: checked.takenAt,
    picture: await rasterToJpeg(upright.raster),
    checked,
  };
}
