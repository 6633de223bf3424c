import type { Mask } from '../raster/raster.ts';

/** How high and how wide a canopy stands over its pot, in the mask's px. */
export interface Stature {
  /** Above the rim, 98 % of the leaf lies below it: no single tip moves it much. */
  readonly heightPx: number;
  /** Across, between the 2 % of the leaf that lies farthest left and right. */
  readonly spreadPx: number;
  /** Mean height of the leaf above the rim. */
  readonly middlePx: number;
  readonly areaPx: number;
}

/** Of the leaf on each side, left out as single tips. */
const TIPS_SHARE = 0.02;

/**
 * Stature of the canopy above the rim.
 *
 * @param mask canopy, px
 * @param rimYPx height of the rim in the mask, px down from its top
 * @returns lengths in px; `null` when no canopy stands above the rim
 *
 * Notes: steadier than the outline's own height and width, which one shoot decides. What hangs below the rim is left out: the pot hides it
 * more or less from week to week.
 *
 * Reference: plain quantiles of area, our own.
 *
 * Example: a square of 100 px on the rim is 98 px high and 96 px wide.
 */
export function statureOf({ width, height, data }: Mask, rimYPx: number): Stature | null {
  const rows = new Float64Array(height);
  const columns = new Float64Array(width);
  const bottom = Math.min(height, Math.max(0, Math.round(rimYPx)));
  let [areaPx, heights] = [0, 0];
  for (let y = 0; y < bottom; y++) {
    for (let x = 0; x < width; x++) {
      if (data[y * width + x] === 0) continue;
      rows[y] = (rows[y] as number) + 1;
      columns[x] = (columns[x] as number) + 1;
      heights += rimYPx - y - 0.5;
      areaPx++;
    }
  }
  if (areaPx === 0) return null;
  const tips = TIPS_SHARE * areaPx;
  return {
    heightPx: rimYPx - placeOf(rows, tips),
    spreadPx: placeOf(columns, areaPx - tips) - placeOf(columns, tips),
    middlePx: heights / areaPx,
    areaPx,
  };
}

/** The place up to which so much lies, between px. */
function placeOf(counts: Float64Array, upTo: number): number {
  let below = 0;
  for (let k = 0; k < counts.length; k++) {
    const count = counts[k] as number;
    if (below + count >= upTo && count > 0) return k + (upTo - below) / count;
    below += count;
  }
  return counts.length;
}
