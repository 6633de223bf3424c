import { openArcDeg } from '../silhouette/open-arc.ts';
import type { Silhouette } from '../silhouette/silhouette.ts';
import { axisFromPot, axisUncertaintyPx, ROLL_DOUBT_DEG } from '../stand/axis.ts';
import type { MeasuredPlant } from '../stand/upright-plant.ts';
import type { LongStemPx } from '../stems/long-stems.ts';
import { type StemsOfPhoto, stemsOfPhoto } from '../stems/stems-of-photo.ts';
import { type BallFit, fitBall } from './ball.ts';
import { type ExtrasPx, extrasOf } from './extras.ts';
import { type Fill, fillOf } from './fill.ts';
import { lopsidednessPercent } from './lopsidedness.ts';
import { type PlusMinus, plusMinusOf, type ScorePlace, withVariances } from './plus-minus.ts';
import { rimVariances } from './rim-doubt.ts';
import { type Roundness, roundnessOf } from './roundness.ts';
import { mirrorSymmetry } from './symmetry.ts';
import { zoneVariances } from './zone-doubt.ts';

/** All measures of one silhouette, in px of the raster it was cut from. */
export interface SilhouetteMeasures {
  readonly fill: Fill;
  readonly axis: { readonly xPx: number; readonly rimYPx: number } | null;
  readonly ball: BallFit | null;
  readonly openArcDeg: number | null;
  readonly roundness: Roundness | null;
  readonly symmetry: number | null;
  readonly lopsidedness: number | null;
  /** `null` for a silhouette too small to hold a circle. */
  readonly extras: ExtrasPx | null;
  readonly longStems: readonly LongStemPx[];
  /** `null` without a ball. */
  readonly plusMinus: PlusMinus | null;
  readonly notes: readonly string[];
}

/** Less of the circle than this is too little to speak of the whole ball without a word of warning. */
const LITTLE_OPEN_DEG = 200;

/**
 * Takes every measure of a silhouette.
 *
 * @param silhouette of `found.canopy`, px
 * @param found the cut-out: pot rim and doubt of the outline, px
 * @param rollDoubtDeg one standard deviation of the camera's roll, degrees: smaller once the photo was brought into the stand's frame
 * @returns measures in px; what cannot be known is `null` with its reason in `notes`
 *
 * Example: a disc standing on its pot has roundness and symmetry near 100 and lopsidedness near 0.
 */
export function measureSilhouette(
  silhouette: Silhouette,
  found: MeasuredPlant,
  rollDoubtDeg: number = ROLL_DOUBT_DEG.loose,
): SilhouetteMeasures {
  const { pot, edgeUncertaintyPx } = found;
  const axis = pot === null ? null : axisFromPot(pot);
  const ball = fitBall(silhouette, pot);
  const roundness = ball === null ? null : roundnessOf(ball.form);
  // Without a pot the best upright line is the one through the canopy's own middle.
  const place = { axisXPx: axis?.xPx ?? silhouette.centroidPx[0], rimYPx: axis?.rimYPx ?? null };
  const symmetry = mirrorSymmetry(silhouette.mask, place.axisXPx, place.rimYPx);

  const notes: string[] = [];
  if (axis === null) {
    notes.push(
      'No pot rim was found, so the plant axis is not known: symmetry is taken about the upright line through the middle of the canopy, and lopsidedness cannot be told.',
    );
  }
  if (ball === null || roundness === null) {
    notes.push(
      'The outline that can be seen fixes no circle, so there is no ball, no roundness and no plus-minus for the other scores.',
    );
  }
  if (symmetry === null) notes.push('No canopy stands above the pot rim, so symmetry cannot be told.');
  const arcDeg = ball === null ? null : openArcDeg(ball.profile.arc);
  if (arcDeg !== null && arcDeg < LITTLE_OPEN_DEG) {
    notes.push(`The pot hides much of the ball: roundness rests on ${Math.round(arcDeg)}° of its outline.`);
  }

  const stems: StemsOfPhoto =
    ball === null
      ? { stems: [], notes: [] }
      : stemsOfPhoto(
          silhouette,
          pot === null || axis === null ? null : { rim: pot, axis },
          ball,
          edgeUncertaintyPx,
        );

  return {
    fill: fillOf(silhouette),
    axis,
    ball: roundness === null ? null : ball,
    openArcDeg: arcDeg,
    roundness,
    symmetry,
    lopsidedness:
      axis === null || ball === null
        ? null
        : lopsidednessPercent(silhouette.centroidPx[0], axis.xPx, ball.radiusPx),
    extras: extrasOf(silhouette, { axis, ball: roundness === null ? null : ball, symmetry }),
    longStems: stems.stems,
    plusMinus: ball === null ? null : wholePlusMinus(silhouette, found, ball, place, rollDoubtDeg),
    notes: [...notes, ...stems.notes],
  };
}

/** What may differ from photo to photo, and what the cut-out may have put on the wrong side. */
function wholePlusMinus(
  silhouette: Silhouette,
  found: MeasuredPlant,
  ball: BallFit,
  place: ScorePlace,
  rollDoubtDeg: number,
): PlusMinus {
  const { pot, edgeUncertaintyPx: edgePx } = found;
  const axisPx = pot === null ? edgePx : axisUncertaintyPx(pot);
  const rollRad = (rollDoubtDeg * Math.PI) / 180;
  const repeated = plusMinusOf(silhouette, ball, place, { edgePx, axisPx, rollRad });
  return withVariances(repeated, [
    zoneVariances(silhouette, found, ball.radiusPx),
    rimVariances(silhouette, pot, ball.radiusPx),
  ]);
}
