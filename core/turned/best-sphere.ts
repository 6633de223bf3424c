import { dotProduct, factorCovariance, solveCovariance } from './covariance.ts';
import type { SightLine } from './sight-lines.ts';
import type { PlantPoint } from './turned-view.ts';

/** A ball in the plant's own space, plan's unit. */
export interface Sphere {
  readonly centre: PlantPoint;
  readonly radius: number;
}

const MOST_STEPS = 30;
const STILL = 1e-6;
/** Tukey's biweight leaves out what lies more than about 4.7 spreads away; see `robustCircle`. */
const BIWEIGHT_REACH = 4.685;
const LEAST_SPREAD = 0.005;

/**
 * The ball that the sight lines along the outlines touch: least squares of distance from the centre less radius.
 *
 * @param lines sight lines through the outlines of all views, smoothed to form; at least four
 * @param from where to start
 * @param onAxis whether the centre stays on the plant axis
 * @returns the ball, or `null` when the lines fix none
 *
 * Notes: every line that touches a ball passes its centre at the radius, wherever it touches. So the fit needs no hull, and neither the
 * number of views nor a near camera makes it too large. Long stems are left out as in the single view's ball: biweight after a first
 * plain fit.
 *
 * Reference: Gauss–Newton; Beaton and Tukey (1974) for the biweight.
 */
export function bestSphere(lines: readonly SightLine[], from: Sphere, onAxis: boolean): Sphere | null {
  if (lines.length < 4) return null;
  const unknowns = onAxis ? 2 : 4;
  let sphere = onAxis ? { ...from, centre: [0, 0, from.centre[2]] as const } : from;
  for (let step = 0; step < MOST_STEPS; step++) {
    const passes = lines.map((line) => passOf(line, sphere.centre));
    const misses = passes.map(({ distance }) => distance - sphere.radius);
    const spread = Math.max(1.4826 * medianAbsolute(misses), LEAST_SPREAD * sphere.radius);
    const weights = misses.map((miss) => (step < 3 ? 1 : biweight(miss / spread)));
    // Distance falls when the centre moves towards the line; the radius is taken off.
    const slopes = passes.map(({ outwards: [u, v, h] }) => (onAxis ? [-h, -1] : [-u, -v, -h, -1]));
    const normal = factorCovariance(unknowns, (row, column) => {
      let sum = 0;
      slopes.forEach((slope, k) => {
        sum += (weights[k] as number) * (slope[row] as number) * (slope[column] as number);
      });
      return sum;
    });
    if (normal === null) return null;
    const pull = Array.from({ length: unknowns }, (_, row) =>
      dotProduct(
        slopes.map((slope, k) => (weights[k] as number) * (slope[row] as number)),
        misses.map((miss) => -miss),
      ),
    );
    const move = [...solveCovariance(normal, pull)];
    const [du, dv, dh] = onAxis ? [0, 0, move[0] as number] : (move as [number, number, number, number]);
    const [u, v, h] = sphere.centre;
    sphere = { centre: [u + du, v + dv, h + dh], radius: sphere.radius + (move.at(-1) as number) };
    if (!(sphere.radius > 0)) return null;
    if (step > 3 && Math.hypot(...move) < STILL * sphere.radius) break;
  }
  return sphere;
}

/** How far a sight line passes a point, and in which direction from it. */
export function passOf(
  { from, towards }: SightLine,
  point: PlantPoint,
): { distance: number; outwards: PlantPoint } {
  const apart = [from[0] - point[0], from[1] - point[1], from[2] - point[2]] as const;
  const along = dotProduct(apart, towards);
  const pass = [
    apart[0] - along * towards[0],
    apart[1] - along * towards[1],
    apart[2] - along * towards[2],
  ] as const;
  const distance = Math.hypot(...pass);
  if (distance === 0) return { distance, outwards: [0, 0, 0] };
  return { distance, outwards: [pass[0] / distance, pass[1] / distance, pass[2] / distance] };
}

function biweight(spreads: number): number {
  const share = spreads / BIWEIGHT_REACH;
  return Math.abs(share) < 1 ? (1 - share * share) ** 2 : 0;
}

function medianAbsolute(values: readonly number[]): number {
  const sorted = values.map(Math.abs).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] as number;
}
