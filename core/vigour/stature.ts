import type { Mask, PointPx } from '../raster/raster.ts';

/** How high and how wide a canopy stands over its pot, in the mask's px. */
export interface Stature {
  /** Above the rim, 98 % of the leaf lies below it: no single tip moves it much. */
  readonly heightPx: number;
  /** Across, between the 2 % of the leaf that lies farthest left and right. */
  readonly spreadPx: number;
  /** Mean height of the leaf above the rim. */
  readonly middlePx: number;
  readonly areaPx: number;
  /** How far leaf reaches from the rim's middle in each of `REACH_SECTORS`, clockwise from straight up, what hangs below the rim too; 0 where none is. */
  readonly reachPx: readonly number[];
}

export const REACH_SECTORS = 24;
/** Rays that a sector's reach is the root mean square of: so its square is the area within. */
const RAYS_PER_SECTOR = 12;

/** Of the leaf on each side, left out as single tips. */
const TIPS_SHARE = 0.02;

/**
 * Stature of the canopy above the rim.
 *
 * @param mask canopy, px
 * @param rim middle of the rim in the mask, px
 * @returns lengths in px; `null` when no canopy stands above the rim
 *
 * Notes: steadier than the outline's own height and width, which one shoot decides. Of what hangs below the rim only the reach tells: the pot
 * hides it more or less from week to week.
 *
 * Reference: plain quantiles of area, our own.
 *
 * Example: a square of 100 px on the rim is 98 px high and 96 px wide.
 */
export function statureOf(mask: Mask, [rimXPx, rimYPx]: PointPx): Stature | null {
  const { width, height, data } = mask;
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
    reachPx: reachAbout(mask, [rimXPx, rimYPx]),
  };
}

/** Each ray is walked inwards from beyond the picture until it meets leaf. */
function reachAbout({ width, height, data }: Mask, [middleX, middleY]: PointPx): number[] {
  const fromPx = Math.ceil(Math.hypot(width, height));
  const isLeaf = (x: number, y: number) =>
    x >= 0 && y >= 0 && x < width && y < height && data[Math.floor(y) * width + Math.floor(x)] !== 0;
  return Array.from({ length: REACH_SECTORS }, (_, sector) => {
    let squares = 0;
    for (let ray = 0; ray < RAYS_PER_SECTOR; ray++) {
      const turns = (sector - 0.5 + (ray + 0.5) / RAYS_PER_SECTOR) / REACH_SECTORS;
      const [right, down] = [Math.sin(2 * Math.PI * turns), -Math.cos(2 * Math.PI * turns)];
      let reach = fromPx;
      while (reach > 0 && !isLeaf(middleX + reach * right, middleY + reach * down)) reach--;
      squares += reach * reach;
    }
    return Math.sqrt(squares / RAYS_PER_SECTOR);
  });
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
