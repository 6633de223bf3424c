import type { RadialProfile } from '../silhouette/radial-profile.ts';
import type { Silhouette } from '../silhouette/silhouette.ts';
import type { BallFit } from './ball.ts';
import { evenNormals } from './even-normals.ts';
import { FORM_UPR, SHOOT_UPR, smoothProfile } from './gaussian-profile-filter.ts';
import { lopsidednessPercent } from './lopsidedness.ts';
import { roundnessOf } from './roundness.ts';
import { type SeededNoise, seededNoise } from './seeded-noise.ts';
import { mirrorSymmetry } from './symmetry.ts';
import { type MaskWarper, maskWarper } from './warp-mask.ts';

/** What may differ between two photos of one plant on one day, as one standard deviation each. */
export interface Doubts {
  /** Place of the whole outline: the cut-out's own doubt, px. */
  readonly edgePx: number;
  /** Place of the plant axis, px. */
  readonly axisPx: number;
  /** How far the camera, and with it the picture of the upright, is rolled to one side, rad. */
  readonly rollRad: number;
}

/** One number for each score, in the score's own unit. */
export interface ByScore {
  readonly roundness: number;
  readonly symmetry: number;
  readonly lopsidedness: number;
}

/** One number for each score and one for the ball's radius, px. */
export interface ByMeasure extends ByScore {
  readonly radiusPx: number;
}

/** The 95 % repeatability of each score and of the ball's radius. */
export type PlusMinus = ByMeasure;

/** What the scores are taken about, px. */
export interface ScorePlace {
  readonly axisXPx: number;
  /** `null` without a pot. */
  readonly rimYPx: number | null;
}

/** Photos taken again on paper. More would change the result by less than a tenth. */
const REPEATS = 24;
const SEED = 20260301;
/** By how many standard deviations the whole outline, the axis and the upright are off in each repeat. */
const [SHIFTS, ASIDES, LEANS] = [evenNormals(REPEATS, 1), evenNormals(REPEATS, 11), evenNormals(REPEATS, 19)];
/** Standard deviation of an even error of one px: what the raster itself hides. */
const RASTER_PX = 1 / Math.sqrt(12);
/** How much of the outline's leafy roughness is taken to lie elsewhere in the next photo. */
const LEAF_SHARE = 0.4;
/** Cut-off of the ripple: a shoot's tip with its leaves spans some 18° of the ball and moves as one. */
const RIPPLE_UPR = 20;
/** Half-width of the normal distribution's middle 95 %, in standard deviations. */
export const NORMAL_95 = 1.96;

/**
 * Plus-minus of the scores: measures the plant again and again with its outline and axis moved as they may move
 * from one photo to the next on the same day.
 *
 * @param silhouette px of the working raster
 * @param ball px
 * @param place axis and rim height used for the scores, px
 * @param doubts standard deviations, px and rad
 * @returns 1.96 × root mean square departure from the undisturbed score
 *
 * Definition: 1.96 × the repeatability standard deviation of one reading. Of many photos of one unchanged plant 95 in 100
 * read within it of their middle; two of them differ by less than the root sum of squares of both, the repeatability
 * limit r = 1.96·√2·s where both are alike (`changeSince`). It tells how well a reading repeats, not how true it is: what every
 * photo of a plant gets wrong alike moves no trend.
 *
 * How: each repeat moves the whole outline in or out by the cut-out's doubt, moves the axis sideways by its
 * doubt, leans the canopy by the camera's roll, and ripples the outline at the width of a shoot with its leaves. The ripple is the root sum
 * of squares of the cut-out's doubt, the raster's px and four tenths of the outline's own roughness (root mean square of profile
 * less form): a ragged outline of leaves repeats less well than a clipped one.
 *
 * The radius moves with the whole outline; ripples leave it where it is.
 *
 * Notes: holds a turn of the pot by 2° and leaves that moved by a mm or so, through the ripple; the share of the roughness was set on
 * renders photographed again (`tests/reshot`). It holds no growth. Departures are taken from the undisturbed score, not
 * from their mean, because noise can only lower a perfect score. The same photo always gives the same figure.
 *
 * Reference: ISO/IEC Guide 98-3/Suppl. 1:2008 (propagation of distributions); ISO 5725-2:1994 (repeatability standard
 * deviation s_r), ISO 5725-6:1994, 4.1 (repeatability limit).
 *
 * Example: a clean disc of radius 200 px repeats to about 0.3 points of roundness.
 */
export function plusMinusOf(
  silhouette: Silhouette,
  ball: BallFit,
  place: ScorePlace,
  doubts: Doubts,
): PlusMinus {
  const noise = seededNoise(SEED);
  const ripplePx = Math.hypot(doubts.edgePx, RASTER_PX, LEAF_SHARE * roughnessPx(ball));
  const coarse = coarsen(ball.profile);
  const footYPx = place.rimYPx ?? silhouette.centroidPx[1];
  const warper = maskWarper(silhouette, ball, coarse, footYPx);
  const sums = { roundness: 0, symmetry: 0, lopsidedness: 0 };
  const still = scoresOf(warper, ball.radiusPx, coarse, place, null);
  for (let repeat = 0; repeat < REPEATS; repeat++) {
    const disturbance: Disturbance = {
      outlinePx: rippled(coarse, doubts.edgePx * (SHIFTS[repeat] as number), ripplePx, noise),
      axisPx: doubts.axisPx * (ASIDES[repeat] as number),
      leanRad: doubts.rollRad * (LEANS[repeat] as number),
    };
    const moved = scoresOf(warper, ball.radiusPx, coarse, place, disturbance);
    sums.roundness += (moved.roundness - still.roundness) ** 2;
    sums.symmetry += (moved.symmetry - still.symmetry) ** 2;
    sums.lopsidedness += (moved.lopsidedness - still.lopsidedness) ** 2;
  }
  const repeatability = (sum: number) => NORMAL_95 * Math.sqrt(sum / REPEATS);
  return {
    roundness: repeatability(sums.roundness),
    symmetry: repeatability(sums.symmetry),
    lopsidedness: repeatability(sums.lopsidedness),
    radiusPx: NORMAL_95 * Math.hypot(doubts.edgePx, RASTER_PX),
  };
}

/** The plus-minus with further variances, in quadrature. */
export function withVariances(plusMinus: PlusMinus, variances: readonly ByMeasure[]): PlusMinus {
  const withAll = (measure: keyof ByMeasure) => {
    const further = variances.reduce((sum, one) => sum + one[measure], 0);
    return Math.hypot(plusMinus[measure], NORMAL_95 * Math.sqrt(further));
  };
  return {
    roundness: withAll('roundness'),
    symmetry: withAll('symmetry'),
    lopsidedness: withAll('lopsidedness'),
    radiusPx: withAll('radiusPx'),
  };
}

interface Disturbance {
  /** By how much the outline moves outwards, one value a direction of the coarse profile. */
  readonly outlinePx: Float64Array;
  readonly axisPx: number;
  readonly leanRad: number;
}

/** Leafiness of the outline: root mean square of what the form filter takes away. */
function roughnessPx({ profile, form }: BallFit): number {
  let sum = 0;
  profile.radiiPx.forEach((radius, index) => {
    sum += (radius - (form.radiiPx[index] as number)) ** 2;
  });
  return Math.sqrt(sum / profile.radiiPx.length);
}

/** Every third direction: enough for form, a third of the work. */
function coarsen(profile: RadialProfile): RadialProfile {
  const smoothed = smoothProfile(profile, SHOOT_UPR);
  return {
    ...profile,
    stepRad: 3 * profile.stepRad,
    radiiPx: smoothed.radiiPx.filter((_, index) => index % 3 === 0),
  };
}

function rippled(
  profile: RadialProfile,
  shiftPx: number,
  ripplePx: number,
  noise: SeededNoise,
): Float64Array {
  const white = profile.radiiPx.map(() => noise.normal());
  const ripple = smoothProfile({ ...profile, radiiPx: white }, RIPPLE_UPR).radiiPx;
  const spread = Math.sqrt(ripple.reduce((sum, value) => sum + value * value, 0) / ripple.length);
  return ripple.map((value) => shiftPx + (spread > 0 ? (ripplePx * value) / spread : 0));
}

function scoresOf(
  { origin, pxPerPx, warp }: MaskWarper,
  ballRadiusPx: number,
  coarse: RadialProfile,
  place: ScorePlace,
  disturbance: Disturbance | null,
): ByScore {
  const outwardPx = disturbance?.outlinePx ?? new Float64Array(coarse.radiiPx.length);
  const radiiPx = coarse.radiiPx.map((radius, index) => Math.max(0, radius + (outwardPx[index] as number)));
  const form = smoothProfile({ ...coarse, radiiPx }, FORM_UPR);

  const { mask, centroidXPx } = warp(outwardPx, disturbance?.leanRad ?? 0);
  const axisXPx = place.axisXPx + (disturbance?.axisPx ?? 0);
  const rimY = place.rimYPx === null ? null : (place.rimYPx - origin[1]) / pxPerPx;
  return {
    roundness: roundnessOf(form)?.score ?? 0,
    symmetry: mirrorSymmetry(mask, (axisXPx - origin[0]) / pxPerPx, rimY) ?? 0,
    lopsidedness: lopsidednessPercent(centroidXPx, axisXPx, ballRadiusPx),
  };
}
