import type { Silhouette } from '../silhouette/silhouette.ts';
import { statureOf } from './stature.ts';

/** Height, spread and mean height of the canopy above the rim; see `statureOf`. */
export interface PhotoStature {
  readonly heightPx: number;
  readonly spreadPx: number;
  readonly middlePx: number;
  /** `null` without a scale. */
  readonly heightMm: number | null;
  readonly spreadMm: number | null;
  readonly middleMm: number | null;
}

/**
 * Stature in px of the photo and in mm.
 *
 * @param rimYPx of the silhouette's view; `null` without a pot, then there is no stature
 * @param along photo px a px of the view
 */
export function statureInReport(
  { mask }: Silhouette,
  rimYPx: number | null,
  along: number,
  mm: (viewPx: number) => number | null,
): PhotoStature | null {
  const stature = rimYPx === null ? null : statureOf(mask, rimYPx);
  if (stature === null) return null;
  const { heightPx, spreadPx, middlePx } = stature;
  return {
    heightPx: heightPx * along,
    spreadPx: spreadPx * along,
    middlePx: middlePx * along,
    heightMm: mm(heightPx),
    spreadMm: mm(spreadPx),
    middleMm: mm(middlePx),
  };
}
