import type { UprightPhoto } from '../../core/raster/raster.ts';
import { isReadableProfile } from './colour-profile.ts';
import { focalLengthPx } from './focal-length.ts';
import { HeicTooLarge, heicExif } from './heic.ts';
import { withEndMark } from './jpeg-end.ts';
import { MOST_PIXELS } from './most-pixels.ts';
import { type PhotoFormat, recogniseFormat } from './photo-format.ts';
import { readUprightPhoto } from './read-upright-photo.ts';
import {
  LEAST_SIDE_PX,
  MOST_BYTES,
  notAPhoto,
  type RefusedPhoto,
  refusal,
  tooSmall,
} from './refused-photo.ts';
import { compressedPicture } from './sharp-door.ts';
import { type TakenAt, takenAt } from './taken-at.ts';
import { isWholeFile } from './whole-file.ts';

/** A file that was unpacked to its last pixel. */
export interface CheckedPhoto {
  readonly ok: true;
  readonly format: PhotoFormat;
  readonly upright: UprightPhoto;
  readonly takenAt: TakenAt | null;
  /** The camera's own block; `null` when there is none. */
  readonly exif: Uint8Array | null;
  /** In px of `upright.raster`; `null` when the camera did not tell it. */
  readonly focalLengthPx: number | null;
  /** Sentences for the report's `notes`: what was decided while reading. */
  readonly notes: readonly string[];
}

/**
 * Reads a file that came from outside. Whatever is wrong with it comes back as a refusal with a sentence for
 * the grower; it never throws for what the file holds. HEIC is unpacked on the calling thread.
 */
export async function checkPhoto(bytes: Uint8Array): Promise<CheckedPhoto | RefusedPhoto> {
  if (bytes.length === 0) return refusal('empty');
  if (bytes.length > MOST_BYTES) return refusal('too-many-bytes');
  const recognised = recogniseFormat(bytes);
  if (!recognised.known) return notAPhoto(recognised.what);
  const { format } = recognised;
  if (!isWholeFile(bytes, format)) return refusal('cut-off');
  try {
    return format === 'heic' ? await checkHeic(bytes) : await checkCompressed(bytes, format);
  } catch (fault) {
    return refusalFor(fault);
  }
}

async function checkCompressed(bytes: Uint8Array, format: PhotoFormat): Promise<CheckedPhoto | RefusedPhoto> {
  const { autoOrient, hasAlpha, pages, exif, icc } = await compressedPicture(bytes).metadata();
  const { width, height } = autoOrient;
  // Asked before unpacking: a small file can claim a picture that fills the memory.
  if (width * height > MOST_PIXELS) return refusal('too-many-pixels');
  if (Math.min(width, height) < LEAST_SIDE_PX) return tooSmall(width, height);
  const ended = format === 'jpeg' ? withEndMark(bytes) : { bytes, notes: [] };
  const read = await readWithNotes(ended.bytes);
  const notes = [...ended.notes, ...read.notes];
  if (icc && !isReadableProfile(icc)) {
    notes.push(
      'The picture’s colour profile cannot be read; its colours were taken as ordinary ones (sRGB).',
    );
  }
  if (hasAlpha) notes.push('The picture has transparent parts; they were taken as white.');
  if ((pages ?? 1) > 1) notes.push('The picture is animated; its first frame was measured.');
  return { ok: true, format, upright: read.upright, ...cameraFacts(exif, read.upright), notes };
}

/** Where the decoder has to guess pixels; what else it warns of is a camera's habit. */
const PIXELS_LOST = /premature end|bad huffman/i;

/** Reads strictly first, so that what the decoder only warns of is told, or refused where pixels are lost. */
async function readWithNotes(bytes: Uint8Array): Promise<{ upright: UprightPhoto; notes: string[] }> {
  try {
    return { upright: await readUprightPhoto(bytes, 'warning'), notes: [] };
  } catch (fault) {
    if (PIXELS_LOST.test(wordsOf(fault))) throw fault;
    const upright = await readUprightPhoto(bytes);
    return {
      upright,
      notes: ['The file is written in an unusual way; the picture could be read all the same.'],
    };
  }
}

async function checkHeic(bytes: Uint8Array): Promise<CheckedPhoto | RefusedPhoto> {
  const upright = await readUprightPhoto(bytes);
  if (Math.min(upright.widthPx, upright.heightPx) < LEAST_SIDE_PX) {
    return tooSmall(upright.widthPx, upright.heightPx);
  }
  return { ok: true, format: 'heic', upright, ...cameraFacts(heicExif(bytes), upright), notes: [] };
}

function cameraFacts(
  exifBlock: Uint8Array | null | undefined,
  upright: UprightPhoto,
): Pick<CheckedPhoto, 'takenAt' | 'exif' | 'focalLengthPx'> {
  return {
    exif: exifBlock ?? null,
    takenAt: takenAt(exifBlock),
    focalLengthPx: focalLengthPx(exifBlock, upright),
  };
}

/** The decoders tell their faults in English only, so the words are all there is to go by. */
function refusalFor(fault: unknown): RefusedPhoto {
  const words = wordsOf(fault);
  if (fault instanceof HeicTooLarge || /pixel limit/i.test(words)) return refusal('too-many-pixels');
  if (/premature end/i.test(words)) return refusal('cut-off');
  return refusal('broken');
}

function wordsOf(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault);
}
