import type { OpenCvDoor } from '../../../core/opencv/door.ts';
import { dilateMask } from '../../../core/raster/discs.ts';
import type { Mask, Raster } from '../../../core/raster/raster.ts';
import { fitFrame } from '../../../core/stand/frame/fit-frame.ts';
import type { FrameDoubt } from '../../../core/stand/frame/frame-doubt.ts';
import type { Standing } from '../../../core/stand/frame/frame-fit.ts';
import { turnDegOf } from '../../../core/stand/frame/similarity.ts';
import { readSheet } from '../../../core/stand/sheet/read-sheet.ts';
import { frameErrorPx, type MovedPair } from './moved-pairs.ts';

/** One frame fitted and held against the truth. */
export interface ScoredFrame {
  readonly from: 'marks' | 'features' | 'none';
  /** Px of 1600, root mean square over the picture; `null` when no frame was given. */
  readonly error: number | null;
  /** By how much the turn is off, degrees, and what was said of it; `null` when no frame was given. */
  readonly turnErrorDeg: number | null;
  readonly doubt: FrameDoubt | null;
  readonly standing: Standing | 'not told';
  /** Why no frame was given. */
  readonly reason: string | null;
  /** Marks and frame together. */
  readonly ms: number;
}

/** Fits a pair's frame as the measuring does. */
export function scoreFrame(
  door: OpenCvDoor,
  pair: MovedPair,
  plant: Mask | null,
  withSheet: boolean,
): ScoredFrame {
  const start = performance.now();
  const marks = (raster: Raster) => {
    const read = withSheet ? readSheet(door, raster, 'A4', { focalLengthPx: null, place: 'backdrop' }) : null;
    return read?.ok ? read.marks : [];
  };
  const fitted = fitFrame(door, pair.photo, {
    reference: pair.reference,
    photoMarks: marks(pair.photo),
    referenceMarks: marks(pair.reference),
    photoPlant: plant === null ? null : dilateMask(plant, 6),
    referencePlant: null,
  });
  const ms = performance.now() - start;
  if (!fitted.ok) {
    const nothing = { error: null, turnErrorDeg: null, doubt: null };
    return { from: 'none', ...nothing, standing: 'not told', reason: fitted.reason, ms };
  }
  const { from, standing, doubt } = fitted.fit;
  return {
    from,
    error: frameErrorPx(fitted.move, pair),
    turnErrorDeg: turnDegOf(fitted.move) - turnDegOf(pair.toStand),
    doubt,
    standing,
    reason: null,
    ms,
  };
}
