import type { Pot } from '../canopy/found-plant.ts';
import type { PointPx } from '../raster/raster.ts';
import type { RimEnds } from '../silhouette/open-arc.ts';
import type { Silhouette } from '../silhouette/silhouette.ts';
import { rimHeightDoubtPx } from '../stand/axis.ts';
import type { ByMeasure } from './plus-minus.ts';
import { addSquares, quickMeasures } from './quick-measures.ts';

/**
 * What the doubt of the rim's height and width adds to the variance of each score and of the ball's radius.
 *
 * The rim's ends bound the open arc and the rim's height bounds what is compared with its mirror image. Both are moved
 * up and down, and apart and together, by one standard deviation: half the sum of both squared changes.
 *
 * @param silhouette px of the raster
 * @param pot px of the raster; `null` adds nothing
 * @param ballRadiusPx radius of the ball as decided, px
 * @returns variances, each in its score's own unit squared
 *
 * Notes: height and width are taken as independent. The axis' place is not moved here: the repeats of `plusMinusOf` move it.
 * A short pot hidden by leaves can be misread by more.
 *
 * Reference: JCGM 100:2008 (GUM) §5.1.2 and §5.1.3 note 2; both sides are squared apart because the scores bend there.
 *
 * Example: a disc that ends on its rim keeps its roundness wherever the rim is read.
 */
export function rimVariances(silhouette: Silhouette, pot: Pot | null, ballRadiusPx: number): ByMeasure {
  const sums = { roundness: 0, symmetry: 0, lopsidedness: 0, radiusPx: 0 };
  if (pot === null) return sums;
  const decided = quickMeasures(silhouette, pot, ballRadiusPx);
  const downPx = rimHeightDoubtPx(pot);
  const apartPx = pot.rimDoubtPx / 2;
  for (const sign of [-1, 1]) {
    for (const rim of [movedRim(pot, 0, sign * downPx), movedRim(pot, sign * apartPx, 0)]) {
      addSquares(sums, 0.5, quickMeasures(silhouette, rim, ballRadiusPx), decided);
    }
  }
  return sums;
}

/** Each end further out and further down. */
function movedRim({ rimLeftPx, rimRightPx }: RimEnds, outPx: number, downPx: number): RimEnds {
  const moved = ([x, y]: PointPx, side: -1 | 1): PointPx => [x + side * outPx, y + downPx];
  return { rimLeftPx: moved(rimLeftPx, -1), rimRightPx: moved(rimRightPx, 1) };
}
