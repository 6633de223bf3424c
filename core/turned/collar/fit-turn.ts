import { leastSquares } from '../../stand/sheet/least-squares.ts';
import { turnBetween } from '../circular-statistics.ts';
import { CODE_EDGES, type CodeEdge, type SeenEdge } from './code-edges.ts';
import { COLLAR_STEPS } from './collar-code.ts';
import { angleAtColumn, type PotSight } from './pot-sight.ts';

/** How the strip lies before the camera. */
export interface StripPlace {
  readonly sight: PotSight;
  /** Azimuth of the pot that faces the camera, degrees. */
  readonly turnDeg: number;
  /** Printed degrees a degree on the pot, counted from the mark: below 1 where the strip is a little long and laps over itself at the back. */
  readonly scale: number;
}

/** The printed azimuth that is seen at an angle on the pot. */
export function printedAt(angleDeg: number, { turnDeg, scale }: StripPlace): number {
  return turnBetween(0, turnDeg + angleDeg) * scale;
}

export interface FittedTurn extends StripPlace {
  /** One standard deviation of the turn, degrees. */
  readonly turnDoubtDeg: number;
  /** Edges that the fit rests on. */
  readonly edges: number;
  /** Root mean square distance of the edges from their places ÷ what is usual. */
  readonly stray: number;
  /** What speaks against it: squared distances ÷ doubts of all edges seen and of the pot from where it was found; an edge without a place counts as three doubts away. */
  readonly cost: number;
}

/** How far the rim as found may be off, ÷ radius, and the strip's print against its pot: one standard deviation. */
const DOUBT = { axis: 0.025, radius: 0.04, print: 0.012 };
/** One standard deviation of an edge: on the strip, degrees, and in the photo, px. */
const EDGE_DOUBT = { deg: 0.4, px: 0.35 };
/** Edges further from their places than this share of a step belong elsewhere: from round to round less. */
const REACH = [0.9, 0.7, 0.5, 0.5];
/** Further round than this the pot is too slanted to read. */
export const WIDEST_DEG = 68;

const LEAST_EDGES = 4;
/** Squared doubts that an edge without a place counts for. */
const LOST = 9;
const STEP_DEG = 360 / COLLAR_STEPS;

interface EdgePair {
  readonly seen: SeenEdge;
  readonly code: CodeEdge;
}

/**
 * Fits the strip's turn and scale, and the pot's axis and radius, to the edges seen.
 *
 * @param start near enough for each edge to lie within a step of its place
 * @param expected where the pot was found
 * @returns `null` when fewer than four edges find their places
 *
 * Notes: least squares on the edges' azimuths, each taken to the nearest edge of its kind anew in each round. The further round the
 * pot, the more a misplaced axis shifts an edge, so that the edges themselves correct the rim as found.
 */
export function fitTurn(
  edges: readonly SeenEdge[],
  start: StripPlace,
  expected: PotSight,
): FittedTurn | null {
  let place: FittedTurn | null = null;
  for (const reach of REACH) {
    const pairs = pairEdges(edges, place ?? start, reach * STEP_DEG);
    if (pairs.length < LEAST_EDGES) return null;
    place = fitPairs(pairs, place ?? start, expected, edges);
  }
  return place;
}

/** Each edge with the nearest of its kind on the strip. */
function pairEdges(edges: readonly SeenEdge[], place: StripPlace, reachDeg: number): EdgePair[] {
  return edges.flatMap((seen): EdgePair[] => {
    const angle = angleAtColumn(seen.xPx, place.sight);
    if (Math.abs(angle) > WIDEST_DEG) return [];
    const azimuth = place.turnDeg + angle;
    let best: CodeEdge | null = null;
    let least = reachDeg;
    for (const code of CODE_EDGES) {
      if (code.way !== seen.way) continue;
      const apart = Math.abs(turnBetween(code.azimuthDeg / place.scale, azimuth));
      if (apart > least) continue;
      [best, least] = [code, apart];
    }
    return best === null ? [] : [{ seen, code: best }];
  });
}

function fitPairs(
  pairs: readonly EdgePair[],
  from: StripPlace,
  expected: PotSight,
  edges: readonly SeenEdge[],
): FittedTurn {
  const residuals = (values: readonly number[]): number[] => {
    const place = placeOf(values, expected);
    const [, scale = 0, axis = 0, radius = 0] = values;
    const misses = pairs.map(({ seen, code }) => {
      const angle = angleAtColumn(seen.xPx, place.sight);
      const miss = turnBetween(code.azimuthDeg / place.scale, place.turnDeg + angle);
      return miss / edgeDoubtDeg(angle, place);
    });
    return [...misses, scale / DOUBT.print, axis / DOUBT.axis, radius / DOUBT.radius];
  };
  const begin = [
    from.turnDeg,
    Math.log(from.scale),
    (from.sight.axisXPx - expected.axisXPx) / expected.radiusPx,
    Math.log(from.sight.radiusPx / expected.radiusPx),
  ];
  const { values, covariance } = leastSquares(residuals, begin, [0.01, 1e-4, 1e-4, 1e-4]);
  const rest = residuals(values);
  const squares = rest.slice(0, pairs.length).map((miss) => miss * miss);
  const stray = Math.sqrt(sumOf(squares) / pairs.length);
  const place = placeOf(values, expected);
  const inSight = edges.filter(({ xPx }) => Math.abs(angleAtColumn(xPx, place.sight)) <= WIDEST_DEG).length;
  return {
    ...place,
    turnDoubtDeg:
      Math.sqrt(Math.max(0, covariance?.[0]?.[0] ?? Number.POSITIVE_INFINITY)) * Math.max(1, stray),
    edges: pairs.length,
    stray,
    cost:
      sumOf(squares.map((square) => Math.min(square, LOST))) +
      LOST * Math.max(0, inSight - pairs.length) +
      sumOf(rest.slice(pairs.length).map((miss) => miss * miss)),
  };
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

/** `values`: turn, logarithm of the print's share, shift of the axis ÷ radius, logarithm of the radius' share. */
function placeOf(
  [turnDeg = 0, print = 0, axis = 0, radius = 0]: readonly number[],
  { axisXPx, radiusPx, nearness }: PotSight,
): StripPlace {
  return {
    turnDeg,
    scale: Math.exp(print),
    sight: { axisXPx: axisXPx + axis * radiusPx, radiusPx: radiusPx * Math.exp(radius), nearness },
  };
}

function edgeDoubtDeg(angleDeg: number, { sight, scale }: StripPlace): number {
  const degAPx =
    (scale * 180) / (Math.PI * sight.radiusPx * Math.max(0.3, Math.cos((angleDeg * Math.PI) / 180)));
  return Math.hypot(EDGE_DOUBT.deg, EDGE_DOUBT.px * degAPx);
}
