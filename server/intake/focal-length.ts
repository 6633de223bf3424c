import type { UprightPhoto } from '../../core/raster/raster.ts';
import { exifTags } from './exif-tags.ts';

/** Diagonal of the 35 mm film frame, 36 × 24 mm. */
const FILM_DIAGONAL_MM = Math.hypot(36, 24);
/** A picture whose sides are to each other as the camera's within this share was not cropped. */
const SAME_SHAPE = 0.01;
/** Focal lengths (35 mm equivalent) that cameras for growers have. */
const POSSIBLE_MM = { least: 8, most: 1200 };

/**
 * Focal length in px of the raster, from the camera's 35 mm equivalent; `null` when the camera did not tell it or the
 * picture was cropped since.
 *
 * Notes: the equivalent is meant over the diagonal, so other shapes than 3 : 2 come out right; cameras round it to
 * whole mm, 2 % of a phone's 26 mm.
 *
 * Reference: Exif 2.32 (CIPA DC-008-2019), tag FocalLengthIn35mmFilm; CIPA DCG-001-2018, 3.4 (35 mm film equivalent
 * focal length over the diagonal) – the clause from memory.
 */
export function focalLengthPx(
  exifBlock: Uint8Array | null | undefined,
  { raster, widthPx, heightPx }: UprightPhoto,
): number | null {
  const photo = exifTags(exifBlock)?.Photo;
  const equivalentMm = photo?.FocalLengthIn35mmFilm;
  if (typeof equivalentMm !== 'number') return null;
  if (!(equivalentMm >= POSSIBLE_MM.least && equivalentMm <= POSSIBLE_MM.most)) return null;
  const { PixelXDimension: acrossPx, PixelYDimension: downPx } = photo ?? {};
  if (typeof acrossPx === 'number' && typeof downPx === 'number' && acrossPx > 0 && downPx > 0) {
    const cameraShape = Math.max(acrossPx, downPx) / Math.min(acrossPx, downPx);
    const shape = Math.max(widthPx, heightPx) / Math.min(widthPx, heightPx);
    if (Math.abs(shape / cameraShape - 1) > SAME_SHAPE) return null;
  }
  return (equivalentMm / FILM_DIAGONAL_MM) * Math.hypot(raster.width, raster.height);
}
