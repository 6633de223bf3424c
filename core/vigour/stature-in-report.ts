import type { Silhouette } from '../silhouette/silhouette.ts';
import { statureOf } from './stature.ts';

/** Height, spread, mean height and area of the canopy above the rim and its reach; see `statureOf`. */
export interface PhotoStature {
  readonly heightPx: number;
  readonly spreadPx: number;
  readonly middlePx: number;
  readonly areaPx: number;
  /** Clockwise from straight up. */
  readonly reachPx: readonly number[];
  /** Here and below `null` without a scale. */
  readonly heightMm: number | null;
  readonly spreadMm: number | null;
  readonly middleMm: number | null;
  readonly areaMm2: number | null;
  readonly reachMm: readonly number[] | null;
}

/**
 * Stature in px of the photo and in mm.
 *
 * @param axis with the rim's height, of the silhouette's view; `null` without a pot, then there is no stature
 * @param along photo px a px of the view
 */
export function statureInReport(
  { mask }: Silhouette,
  axis: { readonly xPx: number; readonly rimYPx: number } | null,
  along: number,
  mm: (viewPx: number) => number | null,
): PhotoStature | null {
  const stature = axis === null ? null : statureOf(mask, [axis.xPx, axis.rimYPx]);
  if (stature === null) return null;
  const { heightPx, spreadPx, middlePx, areaPx, reachPx } = stature;
  const mmPerPx = mm(1);
  return {
    heightPx: heightPx * along,
    spreadPx: spreadPx * along,
    middlePx: middlePx * along,
    areaPx: areaPx * along * along,
    reachPx: reachPx.map((reach) => rounded(reach * along)),
    heightMm: mm(heightPx),
    spreadMm: mm(spreadPx),
    middleMm: mm(middlePx),
    areaMm2: mmPerPx === null ? null : areaPx * mmPerPx * mmPerPx,
    reachMm: mmPerPx === null ? null : reachPx.map((reach) => rounded(reach * mmPerPx)),
  };
}

/** Tenths are finer than any reading, and the report stays small. */
function rounded(length: number): number {
  return Math.round(10 * length) / 10;
}
