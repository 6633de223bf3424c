import { requireAtLeast } from '../errors/expect.ts';
import type { PointPx } from '../raster/raster.ts';
import { distancesFrom } from './circle.ts';
import { searchCentre } from './circle-search.ts';
import { leastSquaresCircle } from './least-squares-circle.ts';

/** Two circles about one centre that hold all points between them. */
export interface CircularZone {
  readonly centre: PointPx;
  readonly outerRadius: number;
  readonly innerRadius: number;
}

/** More contact candidates than this on one circle: look closer before trying pairs. */
const MOST_CONTACTS = 12;
/** How finely the centre is sought, share of the zone's width: to find a valley, and to make sure that none is deeper. */
const COARSE = 1e-3;
const FINE = 1e-5;

/**
 * Minimum-zone circles (MZCI): the two concentric circles, as close together as possible, that hold all points
 * between them.
 *
 * @param points at least three, not all on a line, any unit; for a profile, the points of the form profile
 * @returns centre and both radii in the points' unit, or `null` when the points fix no circle
 *
 * How: branch and bound over the centre (a move of 1 changes the zone by at most 2) finds the valley of the
 * best centre; there, two outer and two inner contact points fix it exactly, as the crossing of their two perpendicular bisectors,
 * and every pair of pairs near contact is tried. A second, finer search from there makes sure that no other valley is deeper.
 *
 * Notes: the centre is sought within half a radius of the least-squares centre. On short arcs no zone of
 * circles may be best (the zone can widen into a straight strip); then the best within that bound is given.
 *
 * Reference: ISO 12181-1:2011; Ventura and Yeralan (1989), The minimax center estimation problem, for the four contacts.
 *
 * Example: an oval with half axes 5 and 4 gives radii 5 and 4.
 */
export function minimumZoneCircle(points: readonly PointPx[]): CircularZone | null {
  requireAtLeast(points.length, 3, 'points.length');
  const fitted = leastSquaresCircle(points);
  if (fitted === null) return null;
  // About its own centre, so that no digits are lost to where the circle happens to lie.
  const centred = points.map(([x, y]): PointPx => [x - fitted.centre[0], y - fitted.centre[1]]);
  let zone = refineZone(
    centred,
    findValley(centred, fitted.radius, zoneAbout([0, 0], centred), COARSE),
    fitted.radius,
  );
  // Another valley may be deeper by less than the first look could tell: as long as there is one, go there.
  for (;;) {
    const deeper = findValley(centred, fitted.radius, zone, FINE);
    if (widthOf(deeper) >= widthOf(zone) - 1e-13 * fitted.radius) break;
    zone = refineZone(centred, deeper, fitted.radius);
  }
  return {
    centre: [zone.centre[0] + fitted.centre[0], zone.centre[1] + fitted.centre[1]],
    outerRadius: zone.outerRadius,
    innerRadius: zone.innerRadius,
  };
}

/** The zone about a given centre: the outermost and the innermost distance. */
export function zoneAbout(centre: PointPx, points: readonly PointPx[]): CircularZone {
  const [centreX, centreY] = centre;
  let [outer, inner] = [0, Number.POSITIVE_INFINITY];
  for (let index = 0; index < points.length; index++) {
    const point = points[index] as PointPx;
    const [dx, dy] = [point[0] - centreX, point[1] - centreY];
    const squared = dx * dx + dy * dy;
    if (squared > outer) outer = squared;
    if (squared < inner) inner = squared;
  }
  return { centre, outerRadius: Math.sqrt(outer), innerRadius: Math.sqrt(inner) };
}

function widthOf(zone: CircularZone): number {
  return zone.outerRadius - zone.innerRadius;
}

/** The best zone there is, to within about three times `finest` of the known one's width. */
function findValley(
  centred: readonly PointPx[],
  radius: number,
  known: CircularZone,
  finest: number,
): CircularZone {
  const found = searchCentre({
    valueAt: zoneWidths(centred),
    steepness: 2,
    middle: [0, 0],
    half: radius / 2,
    start: { centre: known.centre, value: widthOf(known) },
    finest: Math.max(finest * widthOf(known), 1e-12 * radius),
  });
  return zoneAbout(found.centre, centred);
}

/** Points looked at between two looks at whether the zone is wide enough to stop. */
const STRETCH = 32;

/** The width of the zone about a centre; stops where it is sure to be `most` or wider. Asked a hundred thousand times a photo. */
function zoneWidths(points: readonly PointPx[]): (centre: PointPx, most: number) => number {
  const count = points.length;
  const xs = Float64Array.from(points, ([x]) => x);
  const ys = Float64Array.from(points, ([, y]) => y);
  // Where the last zone touched its circles the next one is likely to do as well.
  let outermost = 0;
  let innermost = 0;
  return (centre, most) => {
    const centreX = centre[0];
    const centreY = centre[1];
    const outX = (xs[outermost] as number) - centreX;
    const outY = (ys[outermost] as number) - centreY;
    const inX = (xs[innermost] as number) - centreX;
    const inY = (ys[innermost] as number) - centreY;
    let outer = outX * outX + outY * outY;
    let inner = inX * inX + inY * inY;
    for (let from = 0; from < count; from += STRETCH) {
      const width = Math.sqrt(outer) - Math.sqrt(inner);
      if (width >= most) return width;
      const until = Math.min(count, from + STRETCH);
      for (let index = from; index < until; index++) {
        const dx = (xs[index] as number) - centreX;
        const dy = (ys[index] as number) - centreY;
        const squared = dx * dx + dy * dy;
        if (squared > outer) {
          outer = squared;
          outermost = index;
        }
        if (squared < inner) {
          inner = squared;
          innermost = index;
        }
      }
    }
    return Math.sqrt(outer) - Math.sqrt(inner);
  };
}

/** Moves from a centre in the valley to the exact one, trying contacts within an ever smaller margin. */
function refineZone(points: readonly PointPx[], valley: CircularZone, radius: number): CircularZone {
  let best = valley;
  for (let margin = widthOf(valley) / 4; margin > 1e-14 * radius; margin /= 2) {
    const distances = distancesFrom(best.centre, points);
    const outer = points.filter((_, index) => (distances[index] as number) >= best.outerRadius - margin);
    const inner = points.filter((_, index) => (distances[index] as number) <= best.innerRadius + margin);
    if (outer.length > MOST_CONTACTS || inner.length > MOST_CONTACTS) continue;
    if (outer.length < 2 || inner.length < 2) break;
    const improved = bestOfContacts(points, outer, inner, best);
    const gain = widthOf(best) - widthOf(improved);
    best = improved;
    if (gain <= 1e-15 * radius) break;
  }
  return best;
}

function bestOfContacts(
  points: readonly PointPx[],
  outer: readonly PointPx[],
  inner: readonly PointPx[],
  known: CircularZone,
): CircularZone {
  let best = known;
  for (const [a, b] of pairsOf(outer)) {
    for (const [c, d] of pairsOf(inner)) {
      const centre = crossingOfBisectors(a, b, c, d);
      if (centre === null) continue;
      if (isNarrowerAbout(centre, points, a, c, widthOf(best))) best = zoneAbout(centre, points);
    }
  }
  return best;
}

/** Whether the zone about a centre is narrower than `width`; looks at the contacts first, and no further than needed. */
function isNarrowerAbout(
  centre: PointPx,
  points: readonly PointPx[],
  outermost: PointPx,
  innermost: PointPx,
  width: number,
): boolean {
  const squaredTo = (point: PointPx) => (point[0] - centre[0]) ** 2 + (point[1] - centre[1]) ** 2;
  let [outer, inner] = [squaredTo(outermost), squaredTo(innermost)];
  if (Math.sqrt(outer) - Math.sqrt(inner) >= width) return false;
  for (let index = 0; index < points.length; index++) {
    const squared = squaredTo(points[index] as PointPx);
    if (squared <= outer && squared >= inner) continue;
    outer = Math.max(outer, squared);
    inner = Math.min(inner, squared);
    if (Math.sqrt(outer) - Math.sqrt(inner) >= width) return false;
  }
  return true;
}

function* pairsOf(points: readonly PointPx[]): Generator<readonly [PointPx, PointPx]> {
  for (let first = 0; first < points.length; first++) {
    for (let second = first + 1; second < points.length; second++) {
      yield [points[first] as PointPx, points[second] as PointPx];
    }
  }
}

/** The centre as far from a as from b and as far from c as from d; `null` when the bisectors are parallel. */
function crossingOfBisectors(a: PointPx, b: PointPx, c: PointPx, d: PointPx): PointPx | null {
  const [abX, abY] = [b[0] - a[0], b[1] - a[1]];
  const [cdX, cdY] = [d[0] - c[0], d[1] - c[1]];
  const abMiddle = (b[0] ** 2 + b[1] ** 2 - a[0] ** 2 - a[1] ** 2) / 2;
  const cdMiddle = (d[0] ** 2 + d[1] ** 2 - c[0] ** 2 - c[1] ** 2) / 2;
  const determinant = abX * cdY - abY * cdX;
  if (determinant === 0) return null;
  return [(abMiddle * cdY - cdMiddle * abY) / determinant, (abX * cdMiddle - cdX * abMiddle) / determinant];
}
