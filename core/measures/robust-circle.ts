import type { PointPx } from '../raster/raster.ts';
import { type Circle, distancesFrom } from './circle.ts';
import { leastSquaresCircle } from './least-squares-circle.ts';

/** Tuning of the biweight: 95 % as efficient as plain least squares on Gaussian noise. */
const BIWEIGHT_REACH = 4.685;
/** The spread is never taken below this share of the radius: nobody prunes to a two-hundredth. */
const LEAST_SPREAD = 0.005;
const STEPS = 15;
/** Ends each fit, share of the radius: weights from a circle nearer than this would be no better. */
const FINEST = 1e-9;

/**
 * Least-squares circle that long stems do not pull away from the rest of the plant.
 *
 * @param points at least three, px
 * @returns the circle in px, or `null` when the points fix none
 *
 * How: fits again and again with weights from the distances off the circle: first weights that make the fit a
 * least-absolute one, which outliers cannot capture, then Tukey's biweight, which leaves out what lies more than about
 * 4.7 spreads away and weighs the rest almost evenly.
 *
 * Notes: on an even oval nothing is left out and the result is the plain least-squares circle within
 * 0.5 % of its radius. Up to about a third of the directions may be stems. The fifteen steps are part of the definition: a
 * broad dent or bulge is left out in part only. On an otherwise perfect ball with a dent of 20 % of its radius and 25° the
 * radius reads 2.5 % small (0.4 % when the steps are run to their end), with a bulge of 15 % it reads 1.3 % large.
 *
 * Reference: ISO 12181-1:2011 (LSCI); Beaton and Tukey (1974) for the biweight; Huber (1981), Robust Statistics.
 *
 * Example: a disc with one stem twice its radius gives the disc.
 */
export function robustCircle(points: readonly PointPx[]): Circle | null {
  let circle = leastSquaresCircle(points);
  for (let step = 0; step < STEPS && circle !== null; step++) {
    const { centre, radius } = circle;
    const residuals = distancesFrom(centre, points).map((distance) => distance - radius);
    const spread = Math.max(1.4826 * medianAbsolute(residuals), LEAST_SPREAD * radius);
    const weightOf = step < STEPS / 2 ? leastAbsoluteWeight : biweight;
    circle = leastSquaresCircle(points, {
      weights: residuals.map((residual) => weightOf(residual / spread)),
      from: centre,
      finest: FINEST,
    });
  }
  return circle;
}

function leastAbsoluteWeight(spreads: number): number {
  return 1 / Math.max(Math.abs(spreads), 0.1);
}

function biweight(spreads: number): number {
  const share = spreads / BIWEIGHT_REACH;
  return Math.abs(share) < 1 ? (1 - share * share) ** 2 : 0;
}

function medianAbsolute(values: Float64Array): number {
  const sorted = values.map(Math.abs).sort();
  return sorted[Math.floor(sorted.length / 2)] as number;
}
