import type { FoundPlant, Pot } from '../canopy/found-plant.ts';
import type { MeasuredView, PhotoFacts } from '../report-of-measures.ts';
import { axisFromPot } from './axis.ts';
import type { StandReading } from './read-stand.ts';
import { scaleDoubt, scaleFromRim } from './scale.ts';
import { ballRadiusMm, outlineFactor } from './true-scale.ts';

/** A rim that reads rounder than this is not seen from the side: the opening's height ÷ its width. */
const STEEPEST_SINE = 0.7;

/** The scale at the plant's axis, at the height of the canopy's middle, in px of the view. */
export interface PlantScale {
  readonly mmPerPx: number;
  readonly from: 'rim' | 'sheet';
  /** One standard deviation of it, as a share. */
  readonly doubtShare: number;
  /** What an outline's length is to be multiplied by because a round thing near the camera reads large; 1 when not known. */
  readonly outlineShare: number;
  /** The sheet's scale ÷ the rim's, when both are known; else `null`. */
  readonly sheetOverRim: number | null;
}

/**
 * The scale at the plant's axis: from the stand sheet when it tells one, else from the pot's rim.
 *
 * Notes: with the camera's distance known, told or by the focal length, the rim is counted as standing below the canopy and so
 * farther from a camera that looks down, and rim and ball as the round things they are: their outlines read larger by
 * 1 ÷ √(1 − (R ÷ D)²). One share serves all outline lengths; it is exact for the ball.
 */
export function plantScale(
  photo: PhotoFacts,
  { pot, offAxisRad, measures, silhouette }: MeasuredView,
): PlantScale | null {
  const stand = photo.stand ?? null;
  const { ball } = measures;
  const middleYPx = (ball?.centrePx ?? silhouette.hullMiddlePx)[1];
  const byRim = pot === null || photo.rimMm === null ? null : rimScale(pot, photo.rimMm, stand, middleYPx);
  const sheet = stand?.sheetScale ?? null;
  // The sheet's scale is by depth along the camera's axis; the view looks straight at the plant.
  const bySheet = sheet === null ? null : sheet.mmPerPx / Math.cos(offAxisRad);
  const mmPerPx = bySheet ?? byRim?.mmPerPx ?? null;
  if (mmPerPx === null) return null;
  const doubtShare = sheet !== null ? sheet.doubt / sheet.mmPerPx : pot === null ? 0 : scaleDoubt(pot);
  const distanceMm = stand?.cameraDistanceMm ?? byRim?.distanceMm ?? null;
  return {
    mmPerPx,
    from: bySheet === null ? 'rim' : 'sheet',
    doubtShare,
    outlineShare: outlineShare(ball?.radiusPx ?? null, mmPerPx, distanceMm),
    sheetOverRim: bySheet === null || byRim === null ? null : bySheet / byRim.mmPerPx,
  };
}

/** By the rim, with the camera's level distance that it takes; `null` when that is not known. */
interface RimScale {
  readonly mmPerPx: number;
  readonly distanceMm: number | null;
}

function rimScale(
  pot: Pot,
  rimMm: number,
  stand: Pick<StandReading, 'cameraDistanceMm' | 'focalLengthPx'> | null,
  middleYPx: number,
): RimScale | null {
  const atRim = scaleFromRim(pot, rimMm);
  if (atRim === null) return null;
  const sine = Math.min(STEEPEST_SINE, pot.rim.halfHeightPx / pot.rim.halfWidthPx);
  const slope = sine / Math.sqrt(1 - sine * sine);
  const focalPx = stand?.focalLengthPx ?? null;
  const levelMm =
    stand?.cameraDistanceMm ?? (focalPx === null ? null : focalPx * atRim * Math.sqrt(1 - sine * sine));
  if (levelMm === null || !(levelMm > rimMm)) return { mmPerPx: atRim, distanceMm: null };
  const mmPerPx = atRim * outlineFactor(rimMm / 2, levelMm);
  // How high the middle stands above the rim, and how high the lens above that; the first is seen foreshortened by the second.
  const seenMm = (axisFromPot(pot).rimYPx - middleYPx) * mmPerPx;
  let aboveRimMm = seenMm;
  for (let step = 0; step < 3; step++) {
    aboveRimMm = seenMm * Math.hypot(1, slope - aboveRimMm / levelMm);
  }
  const lensAboveMm = levelMm * slope - aboveRimMm;
  const square = levelMm ** 2 + lensAboveMm ** 2;
  return { mmPerPx: (mmPerPx * square) / (square + aboveRimMm * lensAboveMm), distanceMm: levelMm };
}

function outlineShare(radiusPx: number | null, mmPerPx: number, distanceMm: number | null): number {
  if (radiusPx === null || distanceMm === null) return 1;
  const outlineMm = radiusPx * mmPerPx;
  return outlineMm < distanceMm ? ballRadiusMm(outlineMm, distanceMm) / outlineMm : 1;
}

/** Sheet and rim should agree this well. */
const MOST_DISAGREEMENT = 0.05;

/** Why there is no scale, what was corrected, and where two scales disagree. */
export function scaleNotes(photo: PhotoFacts, found: FoundPlant, scale: PlantScale | null): string[] {
  if (scale === null) {
    if (photo.rimMm === null) {
      return ['The pot rim’s diameter is not known, so sizes are in px; give it to have mm.'];
    }
    return ['No pot rim was found, so sizes are in px.'];
  }
  const notes: string[] = [];
  const { sheetOverRim, outlineShare: share } = scale;
  if (share < 1) {
    const percent = (100 * (1 - share)).toFixed(1);
    notes.push(
      `Sizes in mm are ${percent} % smaller than the outline reads, because the outline of a round plant seen from near reads larger than the plant is.`,
    );
  }
  if (sheetOverRim !== null && found.pot !== null && Math.abs(sheetOverRim - 1) > MOST_DISAGREEMENT) {
    const percent = Math.round(100 * Math.abs(sheetOverRim - 1));
    notes.push(
      `By the pot rim sizes would be ${percent} % ${sheetOverRim > 1 ? 'smaller' : 'larger'} than by the stand sheet, which is used: check the rim’s diameter and how far the pot stands before the sheet.`,
    );
  }
  return notes;
}
