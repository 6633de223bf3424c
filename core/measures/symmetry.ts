import { requireFinite } from '../errors/expect.ts';
import type { Mask } from '../raster/raster.ts';

/**
 * Mirror symmetry: 100 × Dice coefficient of the silhouette with its mirror image in an upright axis, above the rim.
 *
 * @param mask canopy, px
 * @param axisXPx where the axis stands, px, between pixels if need be
 * @param rimYPx height of the rim; only what lies above counts. `null`: the whole mask
 * @returns 0–100, or `null` when nothing of the canopy lies above the rim
 *
 * Notes: exact for the pixels as squares: an axis or a rim through a pixel counts its parts. Both sides have one
 * area, so Dice = shared area ÷ area, and Jaccard would be D ÷ (2 − D). An axis that is off by 5 % of the radius
 * costs a disc 6.4 points, so the axis must come from the pot.
 *
 * Reference: Dice (1945), Measures of the amount of ecologic association between species; mirror overlap as a
 * symmetry measure: de Valcourt (1966), Measures of axial symmetry for ovals.
 *
 * Example: a disc about its own middle gives 100; a rectangle with the axis at its side gives 0.
 */
export function mirrorSymmetry(mask: Mask, axisXPx: number, rimYPx: number | null): number | null {
  requireFinite(axisXPx, 'axisXPx');
  const rows = rimYPx === null ? mask.height : Math.max(0, Math.min(mask.height, rimYPx));
  const runs = new Float64Array(mask.width + 2);
  let area = 0;
  let shared = 0;
  for (let y = 0; y < rows; y++) {
    const share = Math.min(1, rows - y);
    const ends = runsOfRow(mask, y, runs);
    for (let k = 0; k < ends; k += 2) area += share * ((runs[k + 1] as number) - (runs[k] as number));
    shared += share * sharedWithMirror(runs, ends, axisXPx);
  }
  return area > 0 ? (100 * shared) / area : null;
}

/**
 * Stretches of canopy in a row, left to right, as px from edge to edge: left and right end in turns.
 *
 * @param runs gets them
 * @returns how many ends there are
 */
function runsOfRow({ width, data }: Mask, y: number, runs: Float64Array): number {
  let ends = 0;
  let before = 0;
  for (let x = 0, i = y * width; x < width; x++, i++) {
    const inside = data[i] as number;
    if (inside !== before) runs[ends++] = x;
    before = inside;
  }
  if (before === 1) runs[ends++] = width;
  return ends;
}

/** Length that the runs share with their mirror image. */
function sharedWithMirror(runs: Float64Array, ends: number, axis: number): number {
  let shared = 0;
  let here = 0;
  let there = ends - 2;
  while (here < ends && there >= 0) {
    const left = runs[here] as number;
    const right = runs[here + 1] as number;
    const mirrorLeft = 2 * axis - (runs[there + 1] as number);
    const mirrorRight = 2 * axis - (runs[there] as number);
    shared += Math.max(0, Math.min(right, mirrorRight) - Math.max(left, mirrorLeft));
    if (right < mirrorRight) here += 2;
    else there -= 2;
  }
  return shared;
}
