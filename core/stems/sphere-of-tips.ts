import type { Sphere } from '../turned/best-sphere.ts';
import { factorCovariance, solveCovariance } from '../turned/covariance.ts';
import type { PlantPoint } from '../turned/turned-view.ts';

const STEPS = 40;
/** Steps with weights that make the fit a least-absolute one, which outliers cannot capture. */
const LEAST_ABSOLUTE_STEPS = 25;
const BIWEIGHT_REACH = 4.685;
const LEAST_SPREAD = 0.01;
/** The centre is held near the plant axis: one standard deviation for it, share of the radius, against one tip's own unevenness. */
const AXIS_SD = 0.25;
const TIP_SD = 0.08;

/**
 * The ball on which the tips of a bare plant end, long stems left out.
 *
 * @param tips in the plant's space; at least four
 * @param start a ball to begin with
 * @returns ball, or `null` when the tips fix none
 *
 * How: least squares of the tips' distances from the ball, first with weights that make it a least-absolute fit, then Tukey's biweight. Few tips of
 * a fan say little of how deep their centre lies, so it is held near the axis.
 *
 * Reference: Beaton and Tukey (1974) for the biweight.
 */
export function sphereOfTips(tips: readonly PlantPoint[], start: Sphere): Sphere | null {
  if (tips.length < 4) return null;
  let sphere = start;
  for (let step = 0; step < STEPS; step++) {
    const { centre, radius } = sphere;
    const away = tips.map((tip) => Math.hypot(tip[0] - centre[0], tip[1] - centre[1], tip[2] - centre[2]));
    const misses = away.map((distance) => distance - radius);
    const spread = Math.max(1.4826 * medianAbsolute(misses), LEAST_SPREAD * radius);
    const weights = misses.map((miss) =>
      step < LEAST_ABSOLUTE_STEPS ? 1 / Math.max(Math.abs(miss) / spread, 0.1) : biweight(miss / spread),
    );
    const slopes = tips.map((tip, k) => [
      ...[0, 1, 2].map((axis) => ((centre[axis] as number) - (tip[axis] as number)) / (away[k] as number)),
      -1,
    ]);
    const hold = (TIP_SD / AXIS_SD) ** 2;
    const normal = factorCovariance(4, (row, column) => {
      const held = row === column && row < 2 ? hold : 0;
      return slopes.reduce(
        (sum, slope, k) => sum + (weights[k] as number) * (slope[row] as number) * (slope[column] as number),
        held,
      );
    });
    if (normal === null) return null;
    const pull = [0, 1, 2, 3].map((row) =>
      slopes.reduce(
        (sum, slope, k) => sum - (weights[k] as number) * (slope[row] as number) * (misses[k] as number),
        row < 2 ? -hold * (centre[row] as number) : 0,
      ),
    );
    const [du, dv, dh, dr] = solveCovariance(normal, pull) as unknown as [number, number, number, number];
    sphere = { centre: [centre[0] + du, centre[1] + dv, centre[2] + dh], radius: radius + dr };
    if (!(sphere.radius > 0)) return null;
  }
  return sphere;
}

function biweight(spreads: number): number {
  const share = spreads / BIWEIGHT_REACH;
  return Math.abs(share) < 1 ? (1 - share * share) ** 2 : 0;
}

function medianAbsolute(values: readonly number[]): number {
  const sorted = values.map(Math.abs).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] as number;
}
