import type { PointPx } from '../raster/raster.ts';
import { openArc, type RimEnds } from '../silhouette/open-arc.ts';
import {
  DIRECTIONS_PER_TURN,
  profilePoints,
  type RadialProfile,
  radialProfile,
} from '../silhouette/radial-profile.ts';
import type { Silhouette } from '../silhouette/silhouette.ts';
import { FORM_UPR, smoothProfile } from './gaussian-profile-filter.ts';
import { robustCircle } from './robust-circle.ts';

/** The circle that the canopy should fill, and the profile seen from its centre. Px of the working raster. */
export interface BallFit {
  readonly centrePx: PointPx;
  readonly radiusPx: number;
  /** As traced, not smoothed. */
  readonly profile: RadialProfile;
  /** Smoothed to form. */
  readonly form: RadialProfile;
}

const MOST_MOVES = 20;
const STILL_PX = 0.02;
/** A circle that dwarfs the plant is no ball: the outline is nearly straight where it can be seen. */
const LARGEST_BALL = 1.5;

/**
 * Fits the ball: the least-squares circle of the form profile, whose centre is also the profile's centre.
 *
 * @param silhouette px of the working raster
 * @param rim the pot rim's ends, px, or `null`
 * @param directionsPerTurn how finely the profile is taken
 * @returns ball and profiles in px, or `null` when the visible outline fixes no circle of the plant's size
 *
 * Notes: starts from the middle of the hull and moves the centre until it stays (0.02 px), because the profile,
 * the filter and the open arc all depend on it. A centre that would leave the plant's bounding circle ends
 * the search with `null`.
 *
 * Reference: ISO 12181-1:2011, LSCI; robust weights in `robustCircle`.
 *
 * Example: a disc of radius 100 gives radius 100 ± 0.1 and an open arc of a whole turn.
 */
export function fitBall(
  silhouette: Silhouette,
  rim: RimEnds | null,
  directionsPerTurn: number = DIRECTIONS_PER_TURN,
): BallFit | null {
  const largestPx = (LARGEST_BALL * Math.hypot(silhouette.widthPx, silhouette.heightPx)) / 2;
  let centre = silhouette.hullMiddlePx;
  for (let move = 0; ; move++) {
    const profile = radialProfile(silhouette.loops, centre, openArc(centre, rim), directionsPerTurn);
    if (profile.radiiPx.length < 3) return null;
    const form = smoothProfile(profile, FORM_UPR);
    const circle = robustCircle(profilePoints(form));
    if (circle === null || circle.radius > largestPx) return null;
    const moved = Math.hypot(circle.centre[0] - centre[0], circle.centre[1] - centre[1]);
    if (moved <= STILL_PX || move === MOST_MOVES) {
      return { centrePx: circle.centre, radiusPx: circle.radius, profile, form };
    }
    const strayed = Math.hypot(
      circle.centre[0] - silhouette.hullMiddlePx[0],
      circle.centre[1] - silhouette.hullMiddlePx[1],
    );
    if (strayed > largestPx) return null;
    centre = circle.centre;
  }
}
