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
  let [area, shared] = [0, 0];
  for (let y = 0; y < rows; y++) {
    const share = Math.min(1, rows - y);
    const runs = runsOfRow(mask, y);
    for (const [left, right] of runs) area += share * (right - left);
    shared += share * sharedWithMirror(runs, axisXPx);
  }
  return area > 0 ? (100 * shared) / area : null;
}

type Run = readonly [left: number, right: number];

/** Stretches of canopy in a row, left to right, as px from edge to edge. */
function runsOfRow({ width, data }: Mask, y: number): Run[] {
  const runs: Run[] = [];
  let start = -1;
  for (let x = 0; x <= width; x++) {
    const inside = x < width && data[y * width + x] === 1;
    if (inside && start < 0) start = x;
    if (!inside && start >= 0) {
      runs.push([start, x]);
      start = -1;
    }
  }
  return runs;
}

/** Length that the runs share with their mirror image. */
function sharedWithMirror(runs: readonly Run[], axis: number): number {
  const mirrored = runs.map(([left, right]): Run => [2 * axis - right, 2 * axis - left]).reverse();
  let [shared, here, there] = [0, 0, 0];
  while (here < runs.length && there < mirrored.length) {
    const [left, right] = runs[here] as Run;
    const [mirrorLeft, mirrorRight] = mirrored[there] as Run;
    shared += Math.max(0, Math.min(right, mirrorRight) - Math.max(left, mirrorLeft));
    if (right < mirrorRight) here++;
    else there++;
  }
  return shared;
}
