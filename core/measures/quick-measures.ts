import type { RimEnds } from '../silhouette/open-arc.ts';
import type { Silhouette } from '../silhouette/silhouette.ts';
import { axisFromPot } from '../stand/axis.ts';
import { fitBall } from './ball.ts';
import { lopsidednessPercent } from './lopsidedness.ts';
import type { ByMeasure } from './plus-minus.ts';
import { roundnessOf } from './roundness.ts';
import { mirrorSymmetry } from './symmetry.ts';

/** Enough for form, a quarter of the work of a whole profile. */
const DIRECTIONS = 180;

/**
 * The scores of a silhouette as they would be if it were the true one, quickly: to be compared with one another only.
 *
 * @param silhouette px
 * @param rim the pot rim's ends, px, or `null`
 * @param usualRadiusPx taken for the ball's where there is none
 * @returns scores, 0 where there is nothing to measure, and the ball's radius in px
 */
export function quickMeasures(silhouette: Silhouette, rim: RimEnds | null, usualRadiusPx: number): ByMeasure {
  const ball = fitBall(silhouette, rim, DIRECTIONS);
  const radiusPx = ball?.radiusPx ?? usualRadiusPx;
  const axis = rim === null ? null : axisFromPot(rim);
  const axisX = axis?.xPx ?? silhouette.centroidPx[0];
  return {
    roundness: ball === null ? 0 : (roundnessOf(ball.form)?.score ?? 0),
    symmetry: mirrorSymmetry(silhouette.mask, axisX, axis?.rimYPx ?? null) ?? 0,
    lopsidedness: lopsidednessPercent(silhouette.centroidPx[0], axisX, radiusPx),
    radiusPx,
  };
}

/** Adds `weight` times the squared differences of two sets of measures to the sums. */
export function addSquares(
  sums: { -readonly [measure in keyof ByMeasure]: number },
  weight: number,
  one: ByMeasure,
  other: ByMeasure,
) {
  for (const measure of Object.keys(sums) as (keyof ByMeasure)[]) {
    sums[measure] += weight * (one[measure] - other[measure]) ** 2;
  }
}
