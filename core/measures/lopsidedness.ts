import { requirePositive } from '../errors/expect.ts';
import type { Lopsidedness } from '../report.ts';

/**
 * Lopsidedness: how far the silhouette's centroid stands beside the plant axis, in % of the ball's radius.
 *
 * @param centroidXPx mean x of the canopy's pixels
 * @param axisXPx where the plant axis stands
 * @param ballRadiusPx above 0
 * @returns %, right positive
 *
 * Notes: one photo tells left from right only; towards or away from the camera needs a second view. A half disc
 * with its flat side on the axis reads 4 ÷ 3π = 42.4 %.
 *
 * Reference: first moment of area about the axis; the scaling is our own.
 *
 * Example: centroid 805, axis 800, radius 100 gives 5.
 */
export function lopsidednessPercent(centroidXPx: number, axisXPx: number, ballRadiusPx: number): number {
  requirePositive(ballRadiusPx, 'ballRadiusPx');
  return (100 * (centroidXPx - axisXPx)) / ballRadiusPx;
}

/** Lopsidedness with its heavy side told: `even` within its plus-minus. */
export function sidedLopsidedness(percent: number, plusMinus: number): Lopsidedness {
  const side = Math.abs(percent) <= plusMinus ? 'even' : percent < 0 ? 'left' : 'right';
  return { percent, plusMinus, side };
}
