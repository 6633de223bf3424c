import { polygonHull } from 'd3-polygon';
import { requireAtLeast } from '../errors/expect.ts';
import type { PointPx } from '../raster/raster.ts';
import { type Circle, circumcircle } from './circle.ts';

/** Points this far outside, as a share of the radius, still count as held. */
const SLACK = 1e-12;

/**
 * Minimum circumscribed circle (MCCI): the smallest circle that holds all points.
 *
 * @param points at least one, any unit
 * @returns centre and radius in the points' unit
 *
 * How: keeps two or three points that the circle rests on; as long as a point lies outside, takes the farthest in
 * and the best circle of these at most four points.
 *
 * Notes: deterministic, unlike the usual shuffled method. Its radius is never above the outer radius of any zone.
 *
 * Reference: ISO 12181-1:2011; Elzinga and Hearn (1972), Geometrical solutions for some minimax location problems.
 *
 * Example: (10, 10), (20, 20), (30, 30) give centre (20, 20), radius 14.14.
 */
export function minimumCircumscribedCircle(points: readonly PointPx[]): Circle {
  requireAtLeast(points.length, 1, 'points.length');
  // Only corners of the hull can touch; fewer than three points, or points on a line, have no hull.
  const hull = points.length < 3 ? null : polygonHull(points.map(([x, y]): [number, number] => [x, y]));
  const corners: readonly PointPx[] = hull ?? points;
  let held: readonly PointPx[] = corners.slice(0, 1);
  let circle: Circle = { centre: held[0] as PointPx, radius: 0 };
  // Each turn the radius grows, and there are finitely many circles through two or three points.
  for (;;) {
    const farthest = farthestFrom(circle.centre, corners);
    if (distance(circle.centre, farthest) <= circle.radius * (1 + SLACK)) return circle;
    const next = smallestOf([...held, farthest]);
    if (!(next.circle.radius > circle.radius)) return circle;
    ({ held, circle } = next);
  }
}

/** The smallest circle round at most four points, and the two or three of them it rests on. */
function smallestOf(points: readonly PointPx[]): { held: readonly PointPx[]; circle: Circle } {
  let best: { held: readonly PointPx[]; circle: Circle } | null = null;
  const consider = (held: readonly PointPx[], circle: Circle | null) => {
    if (circle === null || (best !== null && circle.radius >= best.circle.radius)) return;
    const reach = circle.radius * (1 + SLACK);
    if (points.every((point) => distance(circle.centre, point) <= reach)) best = { held, circle };
  };
  points.forEach((a, first) => {
    points.slice(first + 1).forEach((b, second) => {
      consider([a, b], circleOnDiameter(a, b));
      for (const c of points.slice(first + second + 2)) consider([a, b, c], circumcircle(a, b, c));
    });
  });
  return best ?? { held: points.slice(0, 1), circle: { centre: points[0] as PointPx, radius: 0 } };
}

function circleOnDiameter(a: PointPx, b: PointPx): Circle {
  return { centre: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], radius: distance(a, b) / 2 };
}

function farthestFrom(centre: PointPx, points: readonly PointPx[]): PointPx {
  return points.reduce((far, point) => (distance(centre, point) > distance(centre, far) ? point : far));
}

function distance(a: PointPx, b: PointPx): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
