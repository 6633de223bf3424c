import type { FoundPlant } from '../canopy/found-plant.ts';
import type { MeasuredView, PhotoFacts } from '../report-of-measures.ts';
import { scaleDoubt, scaleFromRim } from './scale.ts';
import { ballRadiusMm, outlineFactor } from './true-scale.ts';

/** The scale at the plant's axis, in px of the view. */
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
 * @param ballRadiusPx radius of the ball, px of the view; `null` without a ball
 *
 * Notes: with the camera's distance known, the rim and the ball are counted as the round things they are: their outlines read
 * larger by 1 ÷ √(1 − (R ÷ D)²). One share serves all outline lengths; it is exact for the ball.
 */
export function plantScale(
  photo: PhotoFacts,
  { pot, offAxisRad }: Pick<MeasuredView, 'pot' | 'offAxisRad'>,
  ballRadiusPx: number | null,
): PlantScale | null {
  const stand = photo.stand ?? null;
  const distanceMm = stand?.cameraDistanceMm ?? null;
  const byRim = pot === null || photo.rimMm === null ? null : rimScale(pot, photo.rimMm, distanceMm);
  const sheet = stand?.sheetScale ?? null;
  // The sheet's scale is by depth along the camera's axis; the view looks straight at the plant.
  const bySheet = sheet === null ? null : sheet.mmPerPx / Math.cos(offAxisRad);
  const mmPerPx = bySheet ?? byRim;
  if (mmPerPx === null) return null;
  const doubtShare = sheet !== null ? sheet.doubt / sheet.mmPerPx : pot === null ? 0 : scaleDoubt(pot);
  return {
    mmPerPx,
    from: bySheet === null ? 'rim' : 'sheet',
    doubtShare,
    outlineShare: outlineShare(ballRadiusPx, mmPerPx, distanceMm),
    sheetOverRim: bySheet === null || byRim === null ? null : bySheet / byRim,
  };
}

function rimScale(
  pot: NonNullable<FoundPlant['pot']>,
  rimMm: number,
  distanceMm: number | null,
): number | null {
  const scale = scaleFromRim(pot, rimMm);
  if (scale === null || distanceMm === null || !(distanceMm > rimMm)) return scale;
  return scale * outlineFactor(rimMm / 2, distanceMm);
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
