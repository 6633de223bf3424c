import type { PointPx } from '../raster/raster.ts';
import { distancesFrom } from './circle.ts';
import type { Deviations } from './extras.ts';
import { leastSquaresCircle } from './least-squares-circle.ts';

/**
 * Roundness deviations of a profile about its least-squares circle: RONt, RONp, RONv and RONq.
 *
 * @param points of the form profile, at least three, px
 * @returns px, or `null` when the points fix no circle
 *
 * Notes: RONt about this circle is never below RONt about the minimum-zone centre, which `roundnessOf` gives. The circle is
 * the plain one, so a long stem pulls it and counts; the ball leaves stems out. RONq is defined about this circle only.
 *
 * Reference: ISO 12181-1:2011, 3.1.
 *
 * Example: points at 9 and 11 by turns round the whole way have RONt 2, RONp 1, RONv 1, RONq 1.
 */
export function deviationsOf(points: readonly PointPx[]): Deviations | null {
  const circle = leastSquaresCircle(points);
  if (circle === null) return null;
  const distances = distancesFrom(circle.centre, points);
  let [highest, lowest, squares] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, 0];
  for (const distance of distances) {
    highest = Math.max(highest, distance);
    lowest = Math.min(lowest, distance);
    squares += (distance - circle.radius) ** 2;
  }
  return {
    peakToValleyPx: highest - lowest,
    peakPx: highest - circle.radius,
    valleyPx: circle.radius - lowest,
    rootMeanSquarePx: Math.sqrt(squares / distances.length),
  };
}
