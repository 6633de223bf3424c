import { sampleRankCorrelation } from 'simple-statistics';

/** What was said of a photo beside what came out. */
export interface Stated {
  /** The overlap that was to be expected, 0–1. */
  readonly confidence: number;
  readonly iou: number;
}

/** Bounds of the stated confidence: finer towards 1, where most photos lie. */
const BOUNDS = [0, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 1];

export interface ConfidenceLine {
  readonly from: number;
  readonly to: number;
  readonly photos: number;
  readonly meanStated: number;
  readonly meanMeasured: number;
}

/** Photos by their stated confidence; empty bins are left out. */
export function confidenceLines(photos: readonly Stated[]): ConfidenceLine[] {
  return BOUNDS.slice(1).flatMap((to, bin) => {
    const from = BOUNDS[bin] as number;
    const within = photos.filter(({ confidence }) => confidence >= from && (to === 1 || confidence < to));
    if (within.length === 0) return [];
    const mean = (of: (one: Stated) => number) =>
      within.reduce((sum, one) => sum + of(one), 0) / within.length;
    return {
      from,
      to,
      photos: within.length,
      meanStated: mean((one) => one.confidence),
      meanMeasured: mean((one) => one.iou),
    };
  });
}

export function meanAbsoluteError(photos: readonly Stated[]): number {
  return photos.reduce((sum, { confidence, iou }) => sum + Math.abs(confidence - iou), 0) / photos.length;
}

/**
 * Spearman's rank correlation of stated and measured, -1 to 1; `null` for fewer than three photos.
 *
 * Reference: Spearman (1904), The proof and measurement of association between two things.
 */
export function rankCorrelation(photos: readonly Stated[]): number | null {
  if (photos.length < 3) return null;
  return sampleRankCorrelation(
    photos.map(({ confidence }) => confidence),
    photos.map(({ iou }) => iou),
  );
}
