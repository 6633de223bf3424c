import type { OpenCvDoor } from '../../opencv/door.ts';
import type { Mask, PointPx, Raster } from '../../raster/raster.ts';
import { fitFeatures } from './fit-features.ts';
import { fitMarks, type PlacedMark } from './fit-marks.ts';
import type { FrameDoubt } from './frame-doubt.ts';
import type { FrameFit, Homography, NoFrame } from './frame-fit.ts';
import { ELSEWHERE_NOTE } from './frame-words.ts';
import { standingOf } from './limits.ts';
import { homographyOf, inverseOf, moved, type Similarity, turnDegOf, zoomOf } from './similarity.ts';

/** What a photo is laid over by. */
export interface FrameClues {
  /** The stand's reference picture, of the photo's raster size. */
  readonly reference: Raster;
  /** Ring marks of the stand sheet in both pictures, px; empty when there is no sheet or none was seen. */
  readonly referenceMarks: readonly PlacedMark[];
  readonly photoMarks: readonly PlacedMark[];
  /** Where plant and pot stand, of any size; `null` when not known. */
  readonly photoPlant: Mask | null;
  readonly referencePlant: Mask | null;
}

/** A frame, with the similarity that an outline is brought upright by. */
export interface FittedFrame {
  readonly ok: true;
  readonly fit: FrameFit;
  /** Photo px to reference px. */
  readonly move: Similarity;
}

const REASONS = {
  size: (photo: Raster, reference: Raster) =>
    `The photo could not be compared with the stand’s first picture: that one is ${reference.width} × ${reference.height} px and this photo ${photo.width} × ${photo.height} px as measured. Take both with the same camera, zoom and way up.`,
  plain:
    'Whether the camera stands where it stood cannot be told: behind the plant there is nothing that could be recognised. Put up the printed stand sheet, or leave something fixed in the picture.',
  unlike: ELSEWHERE_NOTE,
} as const;

/**
 * Lays a photo over its stand's reference picture: by the stand sheet's ring marks when two or more are seen in both, else by
 * what is seen of the stand itself.
 *
 * @returns the frame, px of the raster; or a plain sentence on why there is none and what to do
 *
 * Example: a photo whose content lies 40 px further right has `shiftPx` [40, 0]: the camera stands further left.
 */
export function fitFrame(door: OpenCvDoor, photo: Raster, clues: FrameClues): FittedFrame | NoFrame {
  const { reference } = clues;
  if (photo.width !== reference.width || photo.height !== reference.height) {
    return { ok: false, cause: 'size', reason: REASONS.size(photo, reference) };
  }
  const byMarks = fitMarks(door, clues.photoMarks, clues.referenceMarks, reference);
  if (byMarks !== null) {
    return { ok: true, move: byMarks.move, fit: frameFit('marks', byMarks, reference) };
  }
  const seen = fitFeatures(door, photo, reference, {
    photo: clues.photoPlant,
    reference: clues.referencePlant,
  });
  if (!seen.ok) return { ok: false, cause: seen.reason, reason: REASONS[seen.reason] };
  const { move, spreadPx, doubt } = seen;
  const fitted = { move, toStand: homographyOf(move), residualPx: spreadPx, doubt };
  return { ok: true, move, fit: frameFit('features', fitted, reference) };
}

interface Fitted {
  readonly move: Similarity;
  readonly toStand: Homography;
  readonly residualPx: number;
  readonly doubt: FrameDoubt;
}

function frameFit(
  from: FrameFit['from'],
  { move, toStand, residualPx, doubt }: Fitted,
  { width, height }: Raster,
): FrameFit {
  const toPhoto = inverseOf(move);
  const middle: PointPx = [width / 2, height / 2];
  const [x, y] = moved(toPhoto, middle);
  const shiftPx: PointPx = [x - middle[0], y - middle[1]];
  const [turnDeg, zoom] = [turnDegOf(toPhoto), zoomOf(toPhoto)];
  const shiftShare = Math.hypot(...shiftPx) / Math.max(width, height);
  return {
    from,
    toStand,
    shiftPx,
    turnDeg,
    zoom,
    residualPx,
    doubt: { shiftPx: doubt.shiftPx, turnDeg: doubt.turnDeg, zoomShare: doubt.zoomShare },
    standing: standingOf({ shiftShare, turnDeg, zoom }),
  };
}
