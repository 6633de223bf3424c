import { SHOOT_UPR, smoothProfile } from '../measures/gaussian-profile-filter.ts';
import type { PointPx } from '../raster/raster.ts';
import { profileAngle, type RadialProfile } from '../silhouette/radial-profile.ts';

/** A place where the outline stands out of a circle. Px. */
export interface OutlineLobe {
  readonly tipPx: PointPx;
  /** Where it meets the circle: for a shoot in the middle of its foot, for a shoulder below its tip. */
  readonly cutPx: PointPx;
  /** How far the tip stands outside the circle. */
  readonly excessPx: number;
  /** Direction of the tip from the centre, rad, clockwise on screen from the right. */
  readonly angleRad: number;
  readonly kind: 'shoot' | 'shoulder';
}

export interface LobeOptions {
  /** The circle's radius about the profile's centre. */
  readonly radiusPx: number;
  /** The smoothed outline must leave the circle by so much. */
  readonly tolerancePx: number;
  /** Two peaks with no valley so deep between them are one. */
  readonly valleyPx: number;
  /** A lobe wider than this at half its height is a shoulder. */
  readonly shoulderRad: number;
}

/** One hour of the clock. */
export const SHOULDER_RAD = Math.PI / 6;

/**
 * Lobes of the shoot profile that stand outside a circle about its centre.
 *
 * @param profile as traced, px
 * @returns lobes in order of direction; `[]` when nothing stands out
 *
 * How: peaks of the profile smoothed to shoots; The tip is the outermost canopy in
 * the lobe's upper half, so the excess is not smoothed away.
 *
 * Notes: the filter leaves less of a thinner stem: one of 2° keeps about half its height. What the pot hides or lies inside the outline is not seen.
 *
 * Reference: the 50-UPR profile of ISO 12181-2:2011; the rules for peaks are our own.
 *
 * Example: a disc of radius 100 with a bar to 140 at the top gives one shoot of 40 px at −π/2.
 */
export function outlineLobes(profile: RadialProfile, options: LobeOptions): OutlineLobe[] {
  const { radiusPx, tolerancePx, valleyPx } = options;
  const shoots = smoothProfile(profile, SHOOT_UPR);
  const peaks = peaksAbove(shoots, radiusPx + tolerancePx, valleyPx);
  return peaks.map((peak, place) =>
    describeLobe(lobeOf(peak, place, peaks, shoots), shoots, profile, options),
  );
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

function describeLobe(
  lobe: Lobe,
  shoots: RadialProfile,
  profile: RadialProfile,
  { radiusPx, shoulderRad }: LobeOptions,
): OutlineLobe {
  const half = radiusPx + (radiusAt(shoots, lobe.peak) - radiusPx) / 2;
  const upperHalf = stretchAbove(shoots, lobe.peak, lobe, half);
  let tip = lobe.peak;
  for (let index = upperHalf.first; index <= upperHalf.last; index++) {
    if (radiusAt(profile, index) > radiusAt(profile, tip)) tip = index;
  }
  const excessPx = radiusAt(profile, tip) - radiusPx;
  const kind = (upperHalf.last - upperHalf.first) * shoots.stepRad > shoulderRad ? 'shoulder' : 'shoot';
  const base = stretchAbove(profile, tip, lobe, radiusPx + excessPx / 4);
  const cut = kind === 'shoot' ? (base.first + base.last) / 2 : tip;
  const place = (index: number, distancePx: number): PointPx => {
    const angle = profileAngle(profile, index);
    return [
      profile.centre[0] + distancePx * Math.cos(angle),
      profile.centre[1] + distancePx * Math.sin(angle),
    ];
  };
  return {
    tipPx: place(tip, radiusPx + excessPx),
    cutPx: place(cut, radiusPx),
    excessPx,
    angleRad: profileAngle(profile, tip),
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
