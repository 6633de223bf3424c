import type { Circle } from '../measures/circle.ts';
import type { PointPx } from '../raster/raster.ts';

/** How unevenly tips end, one standard deviation, share of the radius. */
const TIP_SD = 0.06;
/** Share of the tips that are expected to be long stems, spread evenly up to so many radii. */
const LONG_SHARE = 0.1;
const LONG_REACH = 1.8;
/** The centre lies near the plant axis and about so far above the rim: one standard deviation, share of the radius. */
const AXIS_SD = 0.12;
const HEIGHT = 0.65;
const HEIGHT_SD = 0.2;
const FEWEST_TIPS = 6;
/** Search: steps as shares of the radius, halved until the finest. */
const FIRST_STEP = 0.15;
const FINEST_STEP = 0.002;
const TABLE_STEP = 0.01;

/**
 * The outline of the ball on which the tips of a bare plant end, from one photo.
 *
 * @param tips of all stems, px
 * @param place the plant axis and the rim plane, px
 * @param start a circle to begin with
 * @returns circle, or `null` with fewer than six tips
 *
 * How: tips that stand evenly all round a ball are seen all over its picture, the denser the nearer its outline, because those that point to or from the
 * camera end before it. The circle is the likeliest for the tips' places, with a share of long stems that lie anywhere (maximum likelihood, pattern search).
 *
 * Notes: the density of points spread evenly over a sphere of radius R, seen from afar at distance r from the middle, is 1 ÷ (2π R √(R² − r²)); each tip ends a
 * little before or behind. All three shares are our own choices.
 */
export function circleOfTips(
  tips: readonly PointPx[],
  place: { xPx: number; rimYPx: number | null },
  start: Circle,
): Circle | null {
  if (tips.length < FEWEST_TIPS) return null;
  const likelihood = ({ centre: [cx, cy], radius }: Circle): number => {
    let log = -0.5 * ((cx - place.xPx) / (AXIS_SD * radius)) ** 2;
    if (place.rimYPx !== null) log -= 0.5 * (((place.rimYPx - cy) / radius - HEIGHT) / HEIGHT_SD) ** 2;
    for (const [x, y] of tips) {
      const share = Math.hypot(x - cx, y - cy) / radius;
      const usual = DENSITY[Math.round(share / TABLE_STEP)] ?? 0;
      const long = share > 1 && share < LONG_REACH ? 1 / (Math.PI * (LONG_REACH ** 2 - 1)) : 1e-9;
      log += Math.log(((1 - LONG_SHARE) * usual + LONG_SHARE * long) / (radius * radius));
    }
    return log;
  };
  const starts = [0.8, 1, 1.2].map((share): Circle => ({ ...start, radius: share * start.radius }));
  const ends = starts.map((circle) => climbed(circle, likelihood));
  return ends.reduce((best, one) => (one.value > best.value ? one : best)).circle;
}

/** Goes to the best neighbour until none is better, with ever finer steps. */
function climbed(start: Circle, worth: (circle: Circle) => number): { circle: Circle; value: number } {
  let [circle, value] = [start, worth(start)];
  for (let step = FIRST_STEP; step >= FINEST_STEP; ) {
    const by = step * circle.radius;
    const [cx, cy] = circle.centre;
    const tried = [
      [by, 0, 0],
      [-by, 0, 0],
      [0, by, 0],
      [0, -by, 0],
      [0, 0, by],
      [0, 0, -by],
      // A larger ball with its top in place, and a smaller one.
      [0, by, by],
      [0, -by, -by],
    ].map(([dx = 0, dy = 0, dr = 0]): { circle: Circle; value: number } => {
      const moved: Circle = { centre: [cx + dx, cy + dy], radius: circle.radius + dr };
      return { circle: moved, value: worth(moved) };
    });
    const best = tried.reduce((one, other) => (other.value > one.value ? other : one));
    if (best.value > value) ({ circle, value } = best);
    else step /= 2;
  }
  return { circle, value };
}

/** Density of tips by their distance from the middle, for a ball of radius 1. */
const DENSITY: Float64Array = Float64Array.from({ length: Math.round(2 / TABLE_STEP) }, (_, place) => {
  const at = Math.max(place, 0.5) * TABLE_STEP;
  let sum = 0;
  const steps = 400;
  for (let k = 0; k < steps; k++) {
    const angle = ((k + 0.5) * Math.PI) / 2 / steps;
    const off = (at - Math.sin(angle)) / TIP_SD;
    sum += Math.sin(angle) * Math.exp(-0.5 * off * off);
  }
  const radial = (sum * Math.PI) / 2 / steps / (TIP_SD * Math.sqrt(2 * Math.PI));
  return radial / (2 * Math.PI * at);
});
