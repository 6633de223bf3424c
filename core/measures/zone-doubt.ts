import type { FoundPlant, Pot, UnsureZone } from '../canopy/found-plant.ts';
import type { Mask, PointPx } from '../raster/raster.ts';
import { readSilhouette, type Silhouette } from '../silhouette/silhouette.ts';
import type { ByMeasure } from './plus-minus.ts';
import { addSquares, quickMeasures } from './quick-measures.ts';
import { type Extent, type ReducedCopy, reducedCopy, zoneOnCopy } from './reduced-copy.ts';
import { zoneTurned } from './zone-turned.ts';

/** Zones looked at: the first matter most, and each costs a measurement. */
const MOST_ZONES = 6;
/** Radius that the ball has in the copies, at most. */
const BALL_RADIUS = 90;
const MARGIN_PX = 8;
/** Zone and outline may lie apart by this many px of the copy that zones are found on. */
const RIND = 1.5;

/**
 * What the unsure zones add to the variance of each score and of the ball's radius.
 *
 * Each zone is a yes or no with chance p, whose variance is p(1 − p). Its sensitivity d is how much the score changes
 * when the whole zone is put on the other side: Σ p(1 − p)·d².
 *
 * @param silhouette of the canopy as decided, px of the raster
 * @param found its zones and pot, px of the raster
 * @param ballRadiusPx radius of the ball as decided, px of the raster
 * @returns variances, each in its score's own unit squared; 0 without zones and for sure ones
 *
 * Notes: the zones are taken as independent, because they lie apart and each has mostly a cause of its own (a pale leaf, a
 * reflection, a thing that stands behind). Where they share one, as blooms all of the backdrop's colour do, the
 * truth lies between this and the plain sum √p(1 − p)·|d|. Each zone is turned alone, so what two would
 * change only together is not seen; only the first six count. Where the other side leaves no ball to measure,
 * roundness is taken as 0.
 *
 * Reference: JCGM 100:2008 (GUM) §5.1.2, law of propagation for independent inputs, with the finite change for
 * c_i·u(x_i) as in its §5.1.3 note 2; p(1 − p) is the variance of a Bernoulli variable.
 *
 * Example: one zone of chance 0.5 that moves lopsidedness by 6 % adds 9 %².
 */
export function zoneVariances(
  silhouette: Silhouette,
  found: Pick<FoundPlant, 'canopy' | 'certainty' | 'pot' | 'unsureZones'>,
  ballRadiusPx: number,
): ByMeasure {
  const sums = { roundness: 0, symmetry: 0, lopsidedness: 0, radiusPx: 0 };
  const zones = found.unsureZones.slice(0, MOST_ZONES).filter(({ chance }) => chance * (1 - chance) > 0);
  if (zones.length === 0) return sums;
  const pxPerPx = Math.max(1, ballRadiusPx / BALL_RADIUS);
  const copy = reducedCopy(found.canopy, extentOf(silhouette, zones, MARGIN_PX * pxPerPx), pxPerPx);
  const reachPx = Math.ceil((RIND * found.canopy.width) / found.certainty.width / pxPerPx);

  const decided = measuresOf(copy.mask, copy, found.pot, ballRadiusPx);
  for (const { mask, inCanopy, chance } of zones) {
    const turned = zoneTurned(copy.mask, zoneOnCopy(mask, copy), inCanopy, reachPx);
    const other = measuresOf(turned, copy, found.pot, ballRadiusPx);
    addSquares(sums, chance * (1 - chance), other, decided);
  }
  return sums;
}

/** Holds the silhouette and every zone. */
function extentOf(silhouette: Silhouette, zones: readonly UnsureZone[], marginPx: number): Extent {
  let [left, top] = [silhouette.leftPx, silhouette.topPx];
  let [right, bottom] = [left + silhouette.widthPx, top + silhouette.heightPx];
  for (const { mask } of zones) {
    left = Math.min(left, mask.left);
    top = Math.min(top, mask.top);
    right = Math.max(right, mask.left + mask.width);
    bottom = Math.max(bottom, mask.top + mask.height);
  }
  return {
    leftPx: left - marginPx,
    topPx: top - marginPx,
    widthPx: right - left + 2 * marginPx,
    heightPx: bottom - top + 2 * marginPx,
  };
}

function measuresOf(mask: Mask, copy: ReducedCopy, pot: Pot | null, ballRadiusPx: number): ByMeasure {
  const silhouette = readSilhouette(mask);
  if (silhouette === null) return { roundness: 0, symmetry: 0, lopsidedness: 0, radiusPx: 0 };
  const rim = pot === null ? null : onCopy(pot, copy);
  const measures = quickMeasures(silhouette, rim, ballRadiusPx / copy.pxPerPx);
  return { ...measures, radiusPx: measures.radiusPx * copy.pxPerPx };
}

function onCopy({ rimLeftPx, rimRightPx }: Pot, { origin, pxPerPx }: ReducedCopy) {
  const point = ([x, y]: PointPx): PointPx => [(x - origin[0]) / pxPerPx, (y - origin[1]) / pxPerPx];
  return { rimLeftPx: point(rimLeftPx), rimRightPx: point(rimRightPx) };
}
