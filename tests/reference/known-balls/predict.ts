import type { PointPx } from '../../../core/raster/raster.ts';
import { isBehindPot, type OutlineInPhoto } from './ball-in-space.ts';

/** What the definitions say of an outline. */
export interface Predicted {
  readonly roundness: number;
  readonly symmetry: number;
  readonly lopsidedness: number;
  readonly radiusPx: number;
}

const STEP_DEG = 0.2;
const CUTOFF_UPR = 15;
const ALPHA = Math.sqrt(Math.LN2 / Math.PI);
const ROWS = 2400;

/**
 * The scores of an outline by their definitions, from the outline's formula and not from pixels.
 *
 * Nothing of core is used: the profile is read off the points by angle, the filter is summed as it is written in ISO
 * 16610-21 (at the arc's ends with a straight line under the same weights, ISO 16610-28), both circles are found by downhill simplex,
 * areas and centroid by slicing the outline into rows.
 */
export function predict(outline: OutlineInPhoto): Predicted {
  let centre: PointPx = [outline.axisXPx, mean(outline.points.map(([, y]) => y))];
  let ball = { centre, radius: 0 };
  for (let move = 0; move < 5; move++) {
    ball = robustBall(formPoints(outline, centre));
    centre = ball.centre;
  }
  // Roundness keeps clear of the rim by a quarter of the filter's wavelength.
  const clear = Math.round(360 / CUTOFF_UPR / 4 / STEP_DEG);
  const points = formPoints(outline, centre).slice(clear, -clear);
  const zone = (at: readonly number[]) => {
    const distances = points.map(([x, y]) => Math.hypot(x - (at[0] as number), y - (at[1] as number)));
    return [Math.min(...distances), Math.max(...distances)] as const;
  };
  const [x, y] = downhill((at) => zone(at)[1] - zone(at)[0], [...centre], 4);
  const [inner, outer] = zone([x as number, y as number]);
  const { symmetry, centroidX } = sliced(outline);
  return {
    roundness: (100 * inner) / outer,
    symmetry,
    lopsidedness: (100 * (centroidX - outline.axisXPx)) / ball.radius,
    radiusPx: ball.radius,
  };
}

/** The form profile over the directions that the pot leaves open, as points. */
function formPoints(outline: OutlineInPhoto, centre: PointPx): PointPx[] {
  const down = outline.rimYPx - centre[1];
  const toRight = degrees(Math.atan2(down, outline.axisXPx + outline.rimHalfWidthPx - centre[0]));
  const toLeft = degrees(Math.atan2(down, outline.axisXPx - outline.rimHalfWidthPx - centre[0]));
  // Clockwise on screen from the rim's left end round to its right end.
  const sweep = 360 - (toLeft - toRight);
  const count = Math.round(sweep / STEP_DEG);
  const step = sweep / count;
  const profile = radiiAt(
    outline.points,
    centre,
    Array.from({ length: count + 1 }, (_, k) => toLeft + k * step),
  );
  const lambda = 360 / CUTOFF_UPR;
  return profile.map((_, k) => {
    let [w, wx, wxx, wr, wxr] = [0, 0, 0, 0, 0];
    for (let other = Math.max(0, k - lambda / step); other <= Math.min(count, k + lambda / step); other++) {
      const at = Math.round(other);
      const off = (at - k) * step;
      const weight = Math.exp(-Math.PI * (off / (ALPHA * lambda)) ** 2);
      w += weight;
      wx += weight * off;
      wxx += weight * off * off;
      wr += weight * (profile[at] as number);
      wxr += weight * off * (profile[at] as number);
    }
    const radius = (wxx * wr - wx * wxr) / (w * wxx - wx * wx);
    const angle = ((toLeft + k * step) * Math.PI) / 180;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
}

/** Radii at the given angles (degrees, clockwise on screen) by interpolating between the outline's points. */
function radiiAt(points: readonly PointPx[], centre: PointPx, angles: readonly number[]): number[] {
  const polar = points
    .map(([x, y]) => [
      (degrees(Math.atan2(y - centre[1], x - centre[0])) + 360) % 360,
      Math.hypot(x - centre[0], y - centre[1]),
    ])
    .sort((a, b) => (a[0] as number) - (b[0] as number)) as [number, number][];
  return angles.map((wanted) => {
    const angle = ((wanted % 360) + 360) % 360;
    let [low, high] = [0, polar.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((polar[middle] as [number, number])[0] < angle) low = middle + 1;
      else high = middle;
    }
    const next = polar[low % polar.length] as [number, number];
    const before = polar[(low + polar.length - 1) % polar.length] as [number, number];
    const gap = (next[0] - before[0] + 360) % 360 || 360;
    return before[1] + ((next[1] - before[1]) * ((angle - before[0] + 360) % 360)) / gap;
  });
}

/** The least-absolute circle, the spread about it (at least 0.5 % of the radius), and the circle with the least biweight loss. */
function robustBall(points: readonly PointPx[]): { centre: PointPx; radius: number } {
  const few = points.filter((_, index) => index % 5 === 0);
  const start: [number, number, number] = [
    mean(few.map(([x]) => x)),
    mean(few.map(([, y]) => y)),
    mean(few.map(([x, y]) => Math.hypot(x - 800, y - 600))),
  ];
  const off = (at: readonly number[]) =>
    few.map(([x, y]) => Math.hypot(x - (at[0] as number), y - (at[1] as number)) - (at[2] as number));
  const absolute = downhill((tried) => mean(off(tried).map(Math.abs)), start, 30);
  const sorted = off(absolute)
    .map(Math.abs)
    .sort((a, b) => a - b);
  const spread = Math.max(1.4826 * (sorted[sorted.length >> 1] as number), 0.005 * (absolute[2] as number));
  const loss = (departure: number) => 1 - Math.max(0, 1 - (departure / (4.685 * spread)) ** 2) ** 3;
  const at = downhill((tried) => mean(off(tried).map(loss)), absolute, 2);
  return { centre: [at[0] as number, at[1] as number], radius: at[2] as number };
}

/** Dice about the axis above the rim, and the centroid of all that the pot does not hide, by rows. */
function sliced(outline: OutlineInPhoto): { symmetry: number; centroidX: number } {
  const { points, rimYPx, axisXPx, rimHalfWidthPx } = outline;
  const ys = points.map(([, y]) => y);
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const height = (bottom - top) / ROWS;
  let [area, moment, above, shared] = [0, 0, 0, 0];
  for (let row = 0; row < ROWS; row++) {
    const y = top + (row + 0.5) * height;
    const runs = runsAt(points, y);
    if (y < rimYPx) {
      const [left, right] = [
        runs.map(([from]) => 2 * axisXPx - from),
        runs.map(([, to]) => 2 * axisXPx - to),
      ];
      for (const [from, to] of runs) {
        above += height * (to - from);
        left.forEach((mirrorTo, index) => {
          shared += height * Math.max(0, Math.min(to, mirrorTo) - Math.max(from, right[index] as number));
        });
      }
    }
    const seen = isBehindPot(outline, axisXPx, y)
      ? runs.flatMap(([from, to]) => [
          [from, Math.min(to, axisXPx - rimHalfWidthPx)],
          [Math.max(from, axisXPx + rimHalfWidthPx), to],
        ])
      : runs;
    for (const [from, to] of seen as [number, number][]) {
      if (to <= from) continue;
      area += height * (to - from);
      moment += (height * (to - from) * (from + to)) / 2;
    }
  }
  return { symmetry: (100 * shared) / above, centroidX: moment / area };
}

/** Stretches of a row that lie inside the outline. */
function runsAt(points: readonly PointPx[], y: number): [number, number][] {
  const crossings: number[] = [];
  points.forEach(([x, py], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length] as PointPx;
    if (py > y !== nextY > y) crossings.push(x + ((nextX - x) * (y - py)) / (nextY - py));
  });
  crossings.sort((a, b) => a - b);
  return crossings.flatMap((from, index) =>
    index % 2 === 0 ? [[from, crossings[index + 1] as number]] : [],
  ) as [number, number][];
}

/** Downhill simplex. Reference: Nelder and Mead (1965), A simplex method for function minimization. */
function downhill(
  valueAt: (at: readonly number[]) => number,
  start: readonly number[],
  size: number,
): readonly number[] {
  // Started anew from what was found: a simplex may fold up before it has arrived.
  let best = start;
  for (let round = 0; round < 2; round++) best = simplexFrom(valueAt, best, size / 8 ** round);
  return best;
}

function simplexFrom(valueAt: (at: readonly number[]) => number, start: readonly number[], size: number) {
  const corner = (at: readonly number[]) => ({ at, value: valueAt(at) });
  let simplex = [
    corner(start),
    ...start.map((_, axis) => corner(start.map((each, k) => each + (k === axis ? size : 0)))),
  ];
  for (let step = 0; step < 80; step++) {
    simplex = simplex.sort((a, b) => a.value - b.value);
    const worst = simplex.at(-1) as ReturnType<typeof corner>;
    const others = simplex.slice(0, -1);
    const middle = start.map((_, k) => mean(others.map(({ at }) => at[k] as number)));
    const moved = (share: number) =>
      corner(middle.map((each, k) => each + share * (each - (worst.at[k] as number))));
    const mirrored = moved(1);
    const bestValue = (simplex[0] as ReturnType<typeof corner>).value;
    const nextWorst = (others.at(-1) as ReturnType<typeof corner>).value;
    let taken = mirrored;
    if (mirrored.value < bestValue) {
      const farther = moved(2);
      if (farther.value < mirrored.value) taken = farther;
    } else if (mirrored.value >= nextWorst) {
      taken = moved(mirrored.value < worst.value ? 0.5 : -0.5);
      if (taken.value >= worst.value) {
        const first = (simplex[0] as ReturnType<typeof corner>).at;
        simplex = simplex.map(({ at }) => corner(at.map((each, k) => (each + (first[k] as number)) / 2)));
        continue;
      }
    }
    simplex = [...others, taken];
  }
  return (simplex.sort((a, b) => a.value - b.value)[0] as ReturnType<typeof corner>).at;
}

function degrees(rad: number): number {
  return (rad * 180) / Math.PI;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
