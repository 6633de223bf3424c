import { requireAtLeast } from '../errors/expect.ts';
import type { PointPx } from '../raster/raster.ts';
import { type Circle, circumcircle, distancesFrom } from './circle.ts';
import { searchCentre } from './circle-search.ts';
import { leastSquaresCircle } from './least-squares-circle.ts';

/** More near points than this: look closer before trying triples. */
const MOST_CONTACTS = 24;
/**
 * How finely the centre is sought, share of the radius. Fine, because two local optima may be equal to the fifth digit (four
 * points of the NIST set cir2d13 are).
 */
const FINEST = 1e-9;
/** Points this near to contact, share of the radius, are tried first: on a flat top the found centre may lie well off the best. */
const CONTACT_MARGIN = 3e-4;

/**
 * Maximum inscribed circle (MICI): the largest circle about a centre among the points that holds none of them.
 *
 * @param points at least three, on the whole way round, any unit
 * @returns centre and radius in the points' unit, or `null` when the points fix no circle
 *
 * How: branch and bound over the centre, because there are local optima in which a climber would stop; then the circle
 * through three of the nearest points that leaves none inside.
 *
 * Notes: the centre is sought within half a radius of the least-squares centre, which keeps it among the points.
 *
 * Reference: ISO 12181-1:2011.
 *
 * Example: an oval with half axes 5 and 4 gives radius 4.
 */
export function maximumInscribedCircle(points: readonly PointPx[]): Circle | null {
  requireAtLeast(points.length, 3, 'points.length');
  const fitted = leastSquaresCircle(points);
  if (fitted === null) return null;
  const centred = points.map(([x, y]): PointPx => [x - fitted.centre[0], y - fitted.centre[1]]);
  const nearest = (centre: PointPx) => Math.min(...distancesFrom(centre, centred));
  const finest = FINEST * fitted.radius;
  const found = searchCentre({
    valueAt: (centre) => -nearest(centre),
    steepness: 1,
    middle: [0, 0],
    half: fitted.radius / 2,
    start: { centre: [0, 0], value: -nearest([0, 0]) },
    finest,
  });
  const exact = throughNearest(
    centred,
    { centre: found.centre, radius: -found.value },
    CONTACT_MARGIN * fitted.radius,
  );
  return {
    centre: [exact.centre[0] + fitted.centre[0], exact.centre[1] + fitted.centre[1]],
    radius: exact.radius,
  };
}

function throughNearest(points: readonly PointPx[], found: Circle, marginAtFirst: number): Circle {
  let best = found;
  for (let margin = marginAtFirst; margin > 1e-14 * found.radius; margin /= 2) {
    const distances = distancesFrom(best.centre, points);
    const near = points.filter((_, index) => (distances[index] as number) <= best.radius + margin);
    if (near.length > MOST_CONTACTS) continue;
    for (const circle of circlesOf(near)) {
      const radius = Math.min(...distancesFrom(circle.centre, points));
      const moved = Math.hypot(circle.centre[0] - best.centre[0], circle.centre[1] - best.centre[1]);
      if (radius > best.radius && moved < found.radius / 2) best = { centre: circle.centre, radius };
    }
    return best;
  }
  return best;
}

function* circlesOf(points: readonly PointPx[]): Generator<Circle> {
  for (let first = 0; first < points.length; first++) {
    for (let second = first + 1; second < points.length; second++) {
      for (let third = second + 1; third < points.length; third++) {
        const circle = circumcircle(
          points[first] as PointPx,
          points[second] as PointPx,
          points[third] as PointPx,
        );
        if (circle !== null) yield circle;
      }
    }
  }
}
