import type { PointPx } from '../raster/raster.ts';
import { profileAngle, type RadialProfile } from '../silhouette/radial-profile.ts';
import type { BallFit } from './ball.ts';
import { clockOf } from './clock.ts';
import { SHOOT_UPR, smoothProfile } from './gaussian-profile-filter.ts';

/** A stem or shoulder outside the ball. Px of the working raster. */
export interface LongStemPx {
  readonly tipPx: PointPx;
  readonly cutPx: PointPx;
  /** How far the tip stands outside the ball. */
  readonly excessPx: number;
  readonly clock: number;
  readonly kind: 'shoot' | 'shoulder';
}

export interface LongStemOptions {
  /** How far the smoothed outline may leave the ball and still count as even, as a share of its radius. */
  readonly tolerance: number;
  /** How far a tip must stand out to be worth a knife, as a share of the radius: a leaf that leans out is no stem. */
  readonly leastExcess: number;
  /** A lobe wider than this at half its height is a shoulder; one hour of the clock. */
  readonly shoulderRad: number;
}

export const LONG_STEM_DEFAULTS: LongStemOptions = {
  tolerance: 0.06,
  leastExcess: 0.1,
  shoulderRad: Math.PI / 6,
};

/**
 * Long stems: lobes of the shoot profile that stand outside the ball by more than the tolerance.
 *
 * @param ball the fitted ball with its profile, px
 * @param edgeUncertaintyPx one standard deviation of the outline's place; the tolerance is never below twice this
 * @param options tolerance and shoulder width
 * @returns the stems, longest first; `[]` when nothing stands out
 *
 * How: peaks of the shoot profile above the tolerance; two peaks with no valley of half the tolerance between
 * them are one. The tip is the outermost canopy in the lobe's upper half, so the excess is not smoothed away. The cut mark
 * lies on the ball: for a shoot in the middle of the stem as it stands out, for a shoulder below its tip.
 *
 * Notes: the filter leaves less of a thinner stem: one of 2° keeps about half its height, so a hair-thin stem must stand
 * out by about 12 % to be seen. Single leaves that lean out by a tenth of the radius are still listed: an outline alone does
 * not tell them from shoots. The tenth is our own choice. Stems hidden by the pot or inside the outline are not seen.
 *
 * Reference: lobes of the 50-UPR profile after ISO 12181-2:2011; the rules for peaks are our own.
 *
 * Example: a disc of radius 100 with a bar to 140 at the top gives one shoot at 12, excess 40.
 */
export function longStems(
  ball: BallFit,
  edgeUncertaintyPx: number,
  options: LongStemOptions = LONG_STEM_DEFAULTS,
): LongStemPx[] {
  const tolerancePx = Math.max(options.tolerance * ball.radiusPx, 2 * edgeUncertaintyPx);
  const shoots = smoothProfile(ball.profile, SHOOT_UPR);
  const peaks = peaksAbove(shoots, ball.radiusPx + tolerancePx, tolerancePx / 2);
  return peaks
    .map((peak, place) => describeStem(lobeOf(peak, place, peaks, shoots), shoots, ball, options))
    .filter(({ excessPx }) => excessPx >= options.leastExcess * ball.radiusPx)
    .sort((a, b) => b.excessPx - a.excessPx);
}

/** Places of the peaks above a level, each parted from the next by a valley of at least `depthPx`. */
function peaksAbove(profile: RadialProfile, levelPx: number, depthPx: number): number[] {
  const { radiiPx, closed } = profile;
  const count = radiiPx.length;
  const at = (index: number) => radiiPx[((index % count) + count) % count] as number;
  const rises = (from: number, to: number) => (!closed && (from < 0 || from >= count)) || at(to) > at(from);
  const peaks: number[] = [];
  for (let index = 0; index < count; index++) {
    // Of a flat top the first place counts: it is above its left neighbour and not below its right one.
    const falls = (!closed && index === count - 1) || at(index) >= at(index + 1);
    if (at(index) > levelPx && rises(index - 1, index) && falls) peaks.push(index);
  }
  return joinShallow(peaks, at, closed ? count : null, depthPx);
}

/** Drops the lower of two neighbouring peaks until every valley between neighbours is deep enough. */
function joinShallow(
  found: readonly number[],
  at: (index: number) => number,
  turn: number | null,
  depthPx: number,
): number[] {
  const peaks = [...found];
  for (let place = 0; peaks.length > 1 && place < peaks.length; ) {
    const isLast = place === peaks.length - 1;
    if (isLast && turn === null) break;
    const here = peaks[place] as number;
    const next = (isLast ? (peaks[0] as number) + (turn as number) : peaks[place + 1]) as number;
    let valley = Number.POSITIVE_INFINITY;
    for (let index = here; index <= next; index++) valley = Math.min(valley, at(index));
    if (Math.min(at(here), at(next)) - valley >= depthPx) {
      place++;
      continue;
    }
    peaks.splice(at(here) < at(next) ? place : (place + 1) % peaks.length, 1);
    place = 0;
  }
  return peaks;
}

/** A peak and how far its lobe may reach: to the valleys that part it from its neighbours. */
interface Lobe {
  readonly peak: number;
  readonly first: number;
  readonly last: number;
}

function lobeOf(peak: number, place: number, peaks: readonly number[], profile: RadialProfile): Lobe {
  const count = profile.radiiPx.length;
  const before = peaks[place - 1] ?? (profile.closed ? (peaks.at(-1) as number) - count : -1);
  const after = peaks[place + 1] ?? (profile.closed ? (peaks[0] as number) + count : count);
  return { peak, first: lowestBetween(profile, before, peak), last: lowestBetween(profile, peak, after) };
}

function lowestBetween(profile: RadialProfile, from: number, to: number): number {
  let lowest = from;
  for (let index = from + 1; index <= to; index++) {
    if (radiusAt(profile, index) < radiusAt(profile, lowest)) lowest = index;
  }
  return lowest;
}

function describeStem(
  lobe: Lobe,
  shoots: RadialProfile,
  ball: BallFit,
  options: LongStemOptions,
): LongStemPx {
  const { centrePx, radiusPx, profile } = ball;
  const half = radiusPx + (radiusAt(shoots, lobe.peak) - radiusPx) / 2;
  const upperHalf = stretchAbove(shoots, lobe.peak, lobe, half);
  let tip = lobe.peak;
  for (let index = upperHalf.first; index <= upperHalf.last; index++) {
    if (radiusAt(profile, index) > radiusAt(profile, tip)) tip = index;
  }
  const excessPx = radiusAt(profile, tip) - radiusPx;
  const kind =
    (upperHalf.last - upperHalf.first) * shoots.stepRad > options.shoulderRad ? 'shoulder' : 'shoot';
  const base = stretchAbove(profile, tip, lobe, radiusPx + excessPx / 4);
  const cut = kind === 'shoot' ? (base.first + base.last) / 2 : tip;
  const place = (index: number, distancePx: number): PointPx => {
    const angle = profileAngle(profile, index);
    return [centrePx[0] + distancePx * Math.cos(angle), centrePx[1] + distancePx * Math.sin(angle)];
  };
  return {
    tipPx: place(tip, radiusPx + excessPx),
    cutPx: place(cut, radiusPx),
    excessPx,
    clock: clockOf(profileAngle(profile, tip)),
    kind,
  };
}

/** The unbroken stretch of a lobe round a place where the profile is above a level. */
function stretchAbove(profile: RadialProfile, place: number, lobe: Lobe, levelPx: number) {
  let [first, last] = [place, place];
  while (first > lobe.first && radiusAt(profile, first - 1) > levelPx) first--;
  while (last < lobe.last && radiusAt(profile, last + 1) > levelPx) last++;
  return { first, last };
}

/** The radius at a place counted round a closed profile; 0 past the ends of an open one. */
function radiusAt({ radiiPx, closed }: RadialProfile, index: number): number {
  const count = radiiPx.length;
  if (!closed) return radiiPx[index] ?? 0;
  return radiiPx[((index % count) + count) % count] as number;
}
