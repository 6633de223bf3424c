import type { Circle } from '../measures/circle.ts';
import { SHOOT_UPR, smoothProfile } from '../measures/gaussian-profile-filter.ts';
import { robustCircle } from '../measures/robust-circle.ts';
import type { PointPx } from '../raster/raster.ts';
import { openArc, type RimEnds } from '../silhouette/open-arc.ts';
import type { Loop } from '../silhouette/outline.ts';
import { profileAngle, type RadialProfile, radialProfile } from '../silhouette/radial-profile.ts';

/** Where the plant's tips end when its long stems are left out. Px. */
export interface Crown extends Circle {
  /** As traced, about the crown's centre. */
  readonly profile: RadialProfile;
  /** The outermost place of each sector that no long stem fills. */
  readonly tipsPx: readonly PointPx[];
  /** How unevenly the tips end: 1.4826 × median distance from the circle. */
  readonly unevenPx: number;
}

/** One tip is taken from each sector, rad: about the width of a shoot with its leaves. */
const SECTOR_RAD = Math.PI / 12;
/** A long stem with its leaves is narrower than this at its foot, rad. */
const LOBE_RAD = Math.PI / 4;
/** A lobe that stands above the plant's usual unevenness by more than this is a long stem's, share of the radius. */
const LOBE = 0.12;
/** So far beside a lobe its foot still lifts the outline, rad. */
const FOOT_RAD = Math.PI / 36;
/** Directions steeper below level than this show a bush's underside above its pot, which is flat, rad. */
const UNDERSIDE_RAD = Math.PI / 6;
/**
 * Of the tips behind one another a photo shows the outermost, so the circle lies too far out by this share of the tips' unevenness (found on rendered
 * plants of known tips).
 */
export const SEEN_OUTERMOST = 0.5;
const FEWEST_TIPS = 6;
const MOST_MOVES = 20;
const STILL_PX = 0.05;

/**
 * Fits the crown: the circle through the outermost tips of even sectors, long stems left out.
 *
 * @param loops outlines of the canopy, px
 * @param rim the pot rim's ends, px, or `null`
 * @param start a circle to begin with: the silhouette's ball, px
 * @returns crown, or `null` when too few sectors show an even outline
 *
 * Notes: the ball goes through the middle of the leafy outline, the crown through its tips, some 4 % further out on a leafy plant; on a smooth one they are the
 * same. A stem is long when it stands beyond the other tips, so its excess is counted from here: cut back by it, it ends where its
 * neighbours do. Long lobes are told from the profile itself before anything is fitted, so that many long stems on one side do not
 * pull the circle along. The underside of a bush over its pot is no part of it.
 */
export function crownOf(loops: readonly Loop[], rim: RimEnds | null, start: Circle): Crown | null {
  let circle = start;
  for (let move = 0; ; move++) {
    const { centre } = circle;
    const profile = radialProfile(loops, centre, openArc(centre, rim));
    const tipsPx = sectorTips(profile, longLobes(profile, LOBE * circle.radius), rim !== null);
    const fitted = tipsPx.length < FEWEST_TIPS ? null : robustCircle(tipsPx);
    if (fitted === null) return null;
    const moved = Math.hypot(fitted.centre[0] - centre[0], fitted.centre[1] - centre[1]);
    circle = fitted;
    if (moved > STILL_PX && move < MOST_MOVES) continue;
    const off = tipsPx.map(([x, y]) => Math.abs(Math.hypot(x - centre[0], y - centre[1]) - fitted.radius));
    const unevenPx = 1.4826 * medianOf(off);
    return { centre, radius: fitted.radius - SEEN_OUTERMOST * unevenPx, profile, tipsPx, unevenPx };
  }
}

/** The outermost place of each sector of which at least half is free of long lobes; without a pot nothing tells what is below. */
function sectorTips(profile: RadialProfile, lobes: Uint8Array, onPot: boolean): PointPx[] {
  const { radiiPx, stepRad, centre } = profile;
  const sectors = Math.max(1, Math.round((radiiPx.length * stepRad) / SECTOR_RAD));
  const tips: PointPx[] = [];
  for (let sector = 0; sector < sectors; sector++) {
    const from = Math.round((sector * radiiPx.length) / sectors);
    const to = Math.round(((sector + 1) * radiiPx.length) / sectors);
    let [tip, free] = [-1, 0];
    for (let k = from; k < to; k++) {
      if (lobes[k] === 1) continue;
      free++;
      if (tip < 0 || (radiiPx[k] as number) > (radiiPx[tip] as number)) tip = k;
    }
    if (2 * free < to - from || !((radiiPx[tip] as number) > 0)) continue;
    const angle = profileAngle(profile, tip);
    if (onPot && Math.sin(angle) > Math.sin(UNDERSIDE_RAD)) continue;
    const radius = radiiPx[tip] as number;
    tips.push([centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)]);
  }
  return tips;
}

/**
 * The directions that a long, narrow lobe fills, 1 each.
 *
 * How: the lowest place within half a lobe's width on both sides, and of these the highest again (an opening), passes under every narrow
 * lobe. How far a plant usually stands above that line is its own unevenness.
 */
function longLobes(profile: RadialProfile, lobePx: number): Uint8Array {
  const { stepRad, closed } = profile;
  const reach = Math.round(LOBE_RAD / 2 / stepRad);
  const shoots = smoothProfile(profile, SHOOT_UPR).radiiPx;
  const opened = running(running(shoots, reach, closed, Math.min), reach, closed, Math.max);
  const above = shoots.map((radius, k) => radius - (opened[k] as number));
  const usual = medianOf([...above]);
  const high = above.map((height) => (height > usual + lobePx ? 1 : 0));
  return Uint8Array.from(running(high, Math.round(FOOT_RAD / stepRad), closed, Math.max));
}

/** The least or largest value within reach of each place. */
function running(
  values: Float64Array,
  reach: number,
  closed: boolean,
  pick: (one: number, other: number) => number,
): Float64Array {
  const count = values.length;
  return values.map((own, at) => {
    let picked = own;
    for (let offset = -reach; offset <= reach; offset++) {
      const index = closed ? (((at + offset) % count) + count) % count : at + offset;
      if (index >= 0 && index < count) picked = pick(picked, values[index] as number);
    }
    return picked;
  });
}

function medianOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] as number;
}
