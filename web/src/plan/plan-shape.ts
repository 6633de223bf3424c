import { radOf, turnBetween } from '../../../core/turned/circular-statistics.ts';
import type { PlanReach } from '../../../core/turned/measure-turned.ts';
import type { Point } from '../photo/points.ts';
import { placeAt, ringPath } from './azimuth.ts';

/** Plans are drawn in % of the ball's radius, so that one with mm and one without look alike. */
export const BALL = 100;

/** The arrow of the lopsidedness is drawn this many times as long as it is: a lean of 5 % would hardly be seen. */
export const LEAN_TIMES = 4;

/** The reach as a ring of places. */
export function reachPlaces(reach: readonly PlanReach[], offset: 0 | 1 | -1 = 0): Point[] {
  return reach.map(({ azimuthDeg, percent, plusMinusPercent }) =>
    placeAt(azimuthDeg, Math.max(0, percent + offset * plusMinusPercent)),
  );
}

/** Between reach less and reach plus its plus-minus; to be filled by the even-odd rule. */
export function bandPath(reach: readonly PlanReach[]): string {
  return `${ringPath(reachPlaces(reach, 1))}${ringPath(reachPlaces(reach, -1))}`;
}

/** A stretch of the reach that is measured throughout, or interpolated throughout. */
export interface ReachRun {
  readonly measured: boolean;
  readonly places: readonly Point[];
}

/**
 * Splits the reach, which goes once round, where measuring begins or ends. A stretch between begins and ends at the measured
 * places next to it, so that the line has no gaps.
 */
export function reachRuns(reach: readonly PlanReach[]): ReachRun[] {
  const places = reachPlaces(reach);
  const at = (k: number) => (k + reach.length) % reach.length;
  const start = reach.findIndex(({ measured }, k) => measured !== reach[at(k - 1)]?.measured);
  if (start < 0) {
    const closed = places[0] === undefined ? [] : [...places, places[0]];
    return reach[0] === undefined ? [] : [{ measured: reach[0].measured, places: closed }];
  }
  const runs: { measured: boolean; places: Point[] }[] = [];
  for (let step = 0; step < reach.length; step++) {
    const here = at(start + step);
    const measured = reach[here]?.measured ?? false;
    const place = places[here] as Point;
    const run = runs.at(-1);
    if (run?.measured === measured) run.places.push(place);
    else runs.push({ measured, places: measured ? [place] : [places[at(here - 1)] as Point, place] });
    const next = at(here + 1);
    if (!measured && reach[next]?.measured) runs.at(-1)?.places.push(places[next] as Point);
  }
  return runs;
}

/** The sample of the reach next to an azimuth; `null` without reach. */
export function reachAt(reach: readonly PlanReach[], azimuthDeg: number): PlanReach | null {
  const off = (one: PlanReach) => Math.abs(turnBetween(one.azimuthDeg, azimuthDeg));
  return reach.reduce<PlanReach | null>(
    (best, one) => (best === null || off(one) < off(best) ? one : best),
    null,
  );
}

/** How far from the middle the drawing goes, % of the ball's radius. */
export function planExtent(...plans: readonly (readonly PlanReach[])[]): number {
  const farthest = plans.flatMap((reach) =>
    reach.map(({ percent, plusMinusPercent }) => percent + plusMinusPercent),
  );
  return Math.max(1.12 * BALL, ...farthest);
}

/** How many % of the ball's radius a millimetre is on a plan; `null` where it has no mm. */
export function percentPerMm(reach: readonly PlanReach[]): number | null {
  return reach.flatMap(({ mm, percent }) => (mm === null || mm <= 0 ? [] : [percent / mm]))[0] ?? null;
}

/**
 * An earlier plan in % of today's ball, so that growth shows: by mm where both plans have them.
 *
 * @returns as it is when one of the two has no mm: then only the shapes can be compared
 */
export function inBallOf(
  earlier: readonly PlanReach[],
  now: readonly PlanReach[],
): { readonly reach: readonly PlanReach[]; readonly bySize: boolean } {
  const scale = percentPerMm(now);
  if (scale === null || earlier.some(({ mm }) => mm === null)) {
    return { reach: earlier, bySize: false };
  }
  return {
    bySize: true,
    reach: earlier.map((one) => ({
      ...one,
      percent: (one.mm ?? 0) * scale,
      plusMinusPercent: (one.plusMinusMm ?? 0) * scale,
    })),
  };
}

/** The lean's tip and the oval of its plus-minus, as drawn. */
export interface LeanShape {
  readonly tip: Point;
  /** Half axes along the arrow and across it. */
  readonly along: number;
  readonly across: number;
}

export function leanShape(lean: {
  readonly percent: number;
  readonly azimuthDeg: number;
  readonly plusMinus: number;
  readonly plusMinusDeg: number;
}): LeanShape {
  const across = lean.plusMinusDeg >= 90 ? lean.plusMinus : lean.percent * Math.sin(radOf(lean.plusMinusDeg));
  return {
    tip: placeAt(lean.azimuthDeg, LEAN_TIMES * lean.percent),
    along: LEAN_TIMES * lean.plusMinus,
    across: LEAN_TIMES * across,
  };
}
