import { requirePositiveInteger } from '../errors/expect.ts';
import type { PointPx } from '../raster/raster.ts';
import { isWholeCircle, type OpenArc } from './open-arc.ts';
import type { Loop } from './outline.ts';

/** Outermost canopy radius by direction about a centre, evenly spaced over the open arc. */
export interface RadialProfile {
  readonly centre: PointPx;
  readonly arc: OpenArc;
  /** Angle between neighbours, rad. */
  readonly stepRad: number;
  /** Whether the last direction is next to the first. */
  readonly closed: boolean;
  /** Px; 0 where the canopy does not reach in that direction at all. */
  readonly radiiPx: Float64Array;
}

/** Directions on a whole circle: half a degree apart. */
export const DIRECTIONS_PER_TURN = 720;

/**
 * Profile r(θ): how far out the outline lies in each direction.
 *
 * @param loops outlines of all pieces of the canopy, px
 * @param centre px
 * @param arc directions to look in
 * @param directionsPerTurn how many directions make a whole turn
 * @returns the outermost crossing of each ray with any loop, px
 *
 * Notes: outermost, so a bay behind an overhanging leaf is not seen. Exact for the given loops.
 *
 * Reference: the "outermost radius" profile of ISO 12181-1 (extracted circumferential line), here on an
 * outline that may cross a ray more than once.
 *
 * Example: the square (±1, ±1) has 1 to the right and √2 on the diagonal.
 */
export function radialProfile(
  loops: readonly Loop[],
  centre: PointPx,
  arc: OpenArc,
  directionsPerTurn: number = DIRECTIONS_PER_TURN,
): RadialProfile {
  requirePositiveInteger(directionsPerTurn, 'directionsPerTurn');
  const closed = isWholeCircle(arc);
  const intervals = Math.max(1, Math.round((directionsPerTurn * arc.sweepRad) / (2 * Math.PI)));
  const stepRad = arc.sweepRad / intervals;
  const radiiPx = new Float64Array(closed ? intervals : intervals + 1);
  for (const loop of loops) castLoop(loop, centre, arc.startRad, stepRad, radiiPx);
  return { centre, arc, stepRad, closed, radiiPx };
}

/** Raises every radius to the outermost crossing with one loop, edge by edge. */
function castLoop(loop: Loop, centre: PointPx, startRad: number, stepRad: number, radiiPx: Float64Array) {
  const fullTurn = 2 * Math.PI;
  let a = minus(loop[loop.length - 1] as PointPx, centre);
  let wedge = wedgeAround(a, startRad, stepRad);
  for (let index = 0; index < loop.length; index++) {
    const b = minus(loop[index] as PointPx, centre);
    // Most edges are much shorter than the way to the next ray: both ends between the same two rays meet none.
    if (!isWithin(wedge, b)) {
      // The edge covers the angles from its earlier end on, clockwise, over |turned| (at most half a turn).
      const turned = Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1]);
      const earlier = turned >= 0 ? a : b;
      const from = turnedFrom(startRad, earlier);
      const upTo = from + Math.abs(turned);
      castEdge(a, b, from, upTo, startRad, stepRad, radiiPx);
      if (upTo >= fullTurn - stepRad)
        castEdge(a, b, from - fullTurn, upTo - fullTurn, startRad, stepRad, radiiPx);
      wedge = wedgeAround(b, startRad, stepRad);
    }
    a = b;
  }
}

/** Angle of a place about the centre from the arc's start, 0 up to a whole turn, rad. */
function turnedFrom(startRad: number, [x, y]: PointPx): number {
  const fullTurn = 2 * Math.PI;
  return (((Math.atan2(y, x) - startRad) % fullTurn) + fullTurn) % fullTurn;
}

/** What lies surely between two neighbouring rays: unit vectors a hair inside both. */
interface Wedge {
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
}

/** Much more than the slack with which an edge counts as meeting a ray, much less than a step. */
const HAIR_RAD = 1e-6;
/** Wider wedges cannot be told by two cross products. */
const WIDEST_WEDGE_RAD = 1;

/** The wedge that a place about the centre lies in; `null` on a ray or where steps are wide. */
function wedgeAround(place: PointPx, startRad: number, stepRad: number): Wedge | null {
  if (stepRad > WIDEST_WEDGE_RAD) return null;
  const step = Math.floor(turnedFrom(startRad, place) / stepRad);
  // The ray at the start is met again after a whole turn.
  const from = startRad + step * stepRad + HAIR_RAD;
  const to = startRad + Math.min(2 * Math.PI, (step + 1) * stepRad) - HAIR_RAD;
  if (to <= from) return null;
  const wedge = { fromX: Math.cos(from), fromY: Math.sin(from), toX: Math.cos(to), toY: Math.sin(to) };
  return isWithin(wedge, place) ? wedge : null;
}

function isWithin(wedge: Wedge | null, [x, y]: PointPx): boolean {
  return wedge !== null && wedge.fromX * y - wedge.fromY * x > 0 && wedge.toX * y - wedge.toY * x < 0;
}

/** Meets the rays between two angles (from the arc's start, rad) with the edge a–b, both about the centre. */
function castEdge(
  a: PointPx,
  b: PointPx,
  from: number,
  upTo: number,
  startRad: number,
  stepRad: number,
  radiiPx: Float64Array,
) {
  const cross = a[0] * b[1] - a[1] * b[0];
  const first = Math.max(0, Math.ceil(from / stepRad - 1e-9));
  const last = Math.min(radiiPx.length - 1, Math.floor(upTo / stepRad + 1e-9));
  for (let step = first; step <= last; step++) {
    const angle = startRad + step * stepRad;
    const across = Math.cos(angle) * (b[1] - a[1]) - Math.sin(angle) * (b[0] - a[0]);
    // Edges that point at the centre are met at their outer end.
    const radius = Math.abs(across) > 1e-9 ? cross / across : Math.max(Math.hypot(...a), Math.hypot(...b));
    if (radius > (radiiPx[step] as number)) radiiPx[step] = radius;
  }
}

function minus(a: PointPx, b: PointPx): PointPx {
  return [a[0] - b[0], a[1] - b[1]];
}

/** The angle of a direction of the profile, rad, clockwise on screen from the right. */
export function profileAngle(profile: RadialProfile, index: number): number {
  return profile.arc.startRad + index * profile.stepRad;
}

/** The profile's points in px, in order of direction. */
export function profilePoints(profile: RadialProfile): PointPx[] {
  const [cx, cy] = profile.centre;
  return Array.from(profile.radiiPx, (radius, index) => {
    const angle = profileAngle(profile, index);
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  });
}
