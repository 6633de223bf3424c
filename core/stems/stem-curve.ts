import { factorCovariance, solveCovariance } from '../turned/covariance.ts';
import { seenAt, type ViewSight } from '../turned/sight-lines.ts';
import type { PlantPoint } from '../turned/turned-view.ts';
import { polylineLength } from './stem-length.ts';

/** The middle of a stem in one view, from the rim plane to its tip, at the plane of the axis, plan's unit. */
export interface SeenPath {
  readonly sight: ViewSight;
  readonly places: readonly (readonly [x: number, y: number])[];
}

/** Places along the curve. */
const PLACES = 48;
const ROUNDS = 10;
/** How much the curve holds to being smooth, against how near it passes the paths. */
const STIFFNESS = 0.01;
/** A view whose path lies further from the curve than this followed another stem there, share of the stem's length. */
const MOST_MISS = 0.04;

/**
 * A stem's length in space from its paths in several views.
 *
 * @param paths at least two, of views that differ in direction
 * @returns length, plan's unit; `null` when the paths do not agree on a curve
 *
 * How: places at equal shares of each path's length are a first guess of one another; through the sight lines of each share runs a first curve. Then each
 * place of the curve is drawn to the nearest place of every path, again and again, and held smooth. A view that disagrees is left out.
 */
export function lengthInSpace(paths: readonly SeenPath[]): number | null {
  let used = paths;
  for (;;) {
    if (used.length < 2) return null;
    const curve = curveOf(used);
    if (curve === null) return null;
    const length = polylineLength(curve);
    const misses = used.map((path) => missOf(path, curve));
    const worst = misses.indexOf(Math.max(...misses));
    if ((misses[worst] as number) <= MOST_MISS * length) return length;
    used = used.filter((_, k) => k !== worst);
  }
}

function curveOf(paths: readonly SeenPath[]): PlantPoint[] | null {
  let targets = paths.map(({ places }) => evenly(places, PLACES));
  let curve: PlantPoint[] | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    curve = throughTargets(paths, targets, curve);
    if (curve === null) return null;
    const drawn = curve;
    targets = paths.map(({ sight, places }) =>
      drawn.map((place, k) => {
        // The ends stay with the ends: rim and tip are known.
        if (k === 0) return places[0] as readonly [number, number];
        if (k === PLACES - 1) return places.at(-1) as readonly [number, number];
        const { x, y } = seenAt(sight, place);
        return nearestOn(places, x, y);
      }),
    );
  }
  return curve;
}

/** The smooth curve whose places are seen nearest to their targets: linear least squares, with each place's zoom as last known. */
function throughTargets(
  paths: readonly SeenPath[],
  targets: readonly (readonly (readonly [number, number])[])[],
  before: readonly PlantPoint[] | null,
): PlantPoint[] | null {
  const size = 3 * PLACES;
  const normal = new Float64Array(size * size);
  const right = new Float64Array(size);
  const add = (terms: readonly (readonly [number, number])[], wanted: number, weight: number) => {
    for (const [row, a] of terms) {
      right[row] = (right[row] as number) + weight * a * wanted;
      for (const [column, b] of terms)
        normal[row * size + column] = (normal[row * size + column] as number) + weight * a * b;
    }
  };
  paths.forEach(({ sight }, view) => {
    for (let k = 0; k < PLACES; k++) {
      const [x, y] = (targets[view] as readonly (readonly [number, number])[])[k] as readonly [
        number,
        number,
      ];
      const zoom = before === null ? 1 : seenAt(sight, before[k] as PlantPoint).zoom;
      const eye = sight.camera?.heightMm ?? 0;
      add(
        [
          [3 * k, -sight.sin],
          [3 * k + 1, sight.cos],
        ],
        x / zoom,
        1,
      );
      add([[3 * k + 2, 1]], eye + (y - eye) / zoom, 1);
    }
  });
  for (let k = 1; k < PLACES - 1; k++)
    for (let axis = 0; axis < 3; axis++)
      add(
        [
          [3 * (k - 1) + axis, 1],
          [3 * k + axis, -2],
          [3 * (k + 1) + axis, 1],
        ],
        0,
        STIFFNESS * PLACES,
      );
  const factor = factorCovariance(size, (row, column) => normal[row * size + column] as number);
  if (factor === null) return null;
  const solved = solveCovariance(factor, right);
  return Array.from(
    { length: PLACES },
    (_, k): PlantPoint => [solved[3 * k] as number, solved[3 * k + 1] as number, solved[3 * k + 2] as number],
  );
}

/** Root mean square distance of a view's path from the curve as seen. */
function missOf({ sight, places }: SeenPath, curve: readonly PlantPoint[]): number {
  const squares = curve.reduce((sum, place) => {
    const { x, y } = seenAt(sight, place);
    const [nx, ny] = nearestOn(places, x, y);
    return sum + (nx - x) ** 2 + (ny - y) ** 2;
  }, 0);
  return Math.sqrt(squares / curve.length);
}

/** Places at equal ways along a path, both ends included. */
function evenly(
  places: readonly (readonly [number, number])[],
  count: number,
): (readonly [number, number])[] {
  const step = polylineLength(places) / (count - 1);
  const even: (readonly [number, number])[] = [places[0] as readonly [number, number]];
  let walked = 0;
  for (let k = 1; k < places.length; k++) {
    const [one, other] = [places[k - 1] as readonly [number, number], places[k] as readonly [number, number]];
    const way = Math.hypot(other[0] - one[0], other[1] - one[1]);
    while (even.length < count - 1 && way > 0 && walked + way >= even.length * step) {
      const share = (even.length * step - walked) / way;
      even.push([one[0] + share * (other[0] - one[0]), one[1] + share * (other[1] - one[1])]);
    }
    walked += way;
  }
  while (even.length < count) even.push(places.at(-1) as readonly [number, number]);
  return even;
}

function nearestOn(
  places: readonly (readonly [number, number])[],
  x: number,
  y: number,
): readonly [number, number] {
  let best = places[0] as readonly [number, number];
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k < places.length; k++) {
    const [[ax, ay], [bx, by]] = [
      places[k - 1] as readonly [number, number],
      places[k] as readonly [number, number],
    ];
    const [dx, dy] = [bx - ax, by - ay];
    const squared = dx * dx + dy * dy;
    const share = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / squared));
    const [px, py] = [ax + share * dx, ay + share * dy];
    const apart = (px - x) ** 2 + (py - y) ** 2;
    if (apart >= least) continue;
    least = apart;
    best = [px, py];
  }
  return best;
}
