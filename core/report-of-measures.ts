import { confidenceNote } from './canopy/confidence-note.ts';
import type { FoundPlant, Pot } from './canopy/found-plant.ts';
import type { Extras, ExtrasPx } from './measures/extras.ts';
import { flowerShare } from './measures/flower-share.ts';
import type { SilhouetteMeasures } from './measures/measure-silhouette.ts';
import { NORMAL_95 } from './measures/plus-minus.ts';
import type { PointPx } from './raster/raster.ts';
import {
  type Lopsidedness,
  NO_MEASURES,
  type PhotoReport,
  type PhotoStatus,
  type RimEllipse,
  type Scale,
  type Score,
} from './report.ts';
import type { Silhouette } from './silhouette/silhouette.ts';
import { zoneOutline } from './silhouette/zone-outline.ts';
import { scaleDoubt, scaleFromRim } from './stand/scale.ts';

/** What a report says about the photo itself. */
export interface PhotoFacts {
  readonly name: string;
  /** The photo as stored upright. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** The copy it was measured on. */
  readonly rasterWidthPx: number;
  readonly rasterHeightPx: number;
  readonly rimMm: number | null;
  readonly turnDeg: number | null;
  readonly notes: readonly string[];
}

/** The report of a photo that was read but could not be measured. */
export function reportWithoutMeasures(
  photo: PhotoFacts,
  status: Exclude<PhotoStatus, 'measured'>,
  hint: string,
): PhotoReport {
  return {
    photo: photo.name,
    widthPx: photo.widthPx,
    heightPx: photo.heightPx,
    turnDeg: photo.turnDeg,
    status,
    hint,
    ...NO_MEASURES,
    notes: photo.notes,
  };
}

/**
 * Writes the report: measures in px of the raster become px of the photo as stored upright, and mm where the rim
 * gives a scale.
 *
 * @param photo sizes, rim diameter in mm
 * @param found pot rim, zones and parts in px of the raster
 * @param silhouette px of the raster
 * @param measures px of the raster
 */
export function reportOfMeasures(
  photo: PhotoFacts,
  found: FoundPlant,
  silhouette: Silhouette,
  measures: SilhouetteMeasures,
): PhotoReport {
  // The copy's sides are whole px, so the two factors may differ in the fourth digit; lengths take their mean.
  const across = photo.widthPx / photo.rasterWidthPx;
  const down = photo.heightPx / photo.rasterHeightPx;
  const along = (across + down) / 2;
  const point = ([x, y]: PointPx): PointPx => [x * across, y * down];

  const rasterScale =
    found.pot === null || photo.rimMm === null ? null : scaleFromRim(found.pot, photo.rimMm);
  const scale: Scale | null = rasterScale === null ? null : { mmPerPx: rasterScale / along, from: 'rim' };
  const mm = (rasterPx: number) => (rasterScale === null ? null : rasterPx * rasterScale);

  const { ball, roundness, plusMinus } = measures;
  return {
    ...reportWithoutMeasures(photo, 'no-canopy', ''),
    status: 'measured',
    hint: null,
    scale,
    axis:
      found.pot === null || measures.axis === null
        ? null
        : {
            xPx: measures.axis.xPx * across,
            rimLeftPx: point(found.pot.rimLeftPx),
            rimRightPx: point(found.pot.rimRightPx),
            rimEllipse: rimEllipseOf(found.pot, across, down),
          },
    canopy: {
      areaPx: silhouette.areaPx * across * down,
      widthPx: silhouette.widthPx * across,
      heightPx: silhouette.heightPx * down,
      widthMm: mm(silhouette.widthPx),
      heightMm: mm(silhouette.heightPx),
      ...measures.fill,
      flowerShare: flowerShare(found.parts),
    },
    ball:
      ball === null || roundness === null || plusMinus === null || measures.openArcDeg === null
        ? null
        : {
            centrePx: point(ball.centrePx),
            radiusPx: ball.radiusPx * along,
            radiusMm: mm(ball.radiusPx),
            radiusPlusMinusPx: plusMinus.radiusPx * along,
            radiusPlusMinusMm:
              found.pot === null ? null : mm(withScaleDoubt(ball.radiusPx, plusMinus.radiusPx, found.pot)),
            outOfRoundPx: roundness.outOfRoundPx * along,
            outOfRoundMm: mm(roundness.outOfRoundPx),
            openArcDeg: measures.openArcDeg,
          },
    roundness: scoreOf(roundness?.score ?? null, plusMinus?.roundness ?? null),
    symmetry: scoreOf(measures.symmetry, plusMinus?.symmetry ?? null),
    lopsidedness: lopsidednessOf(measures.lopsidedness, plusMinus?.lopsidedness ?? null),
    extras: extrasInPhoto(measures.extras, along, mm),
    longStems: measures.longStems.map((stem) => ({
      tipPx: point(stem.tipPx),
      cutPx: point(stem.cutPx),
      excessPx: stem.excessPx * along,
      excessMm: mm(stem.excessPx),
      clock: stem.clock,
      kind: stem.kind,
    })),
    confidence: found.confidence,
    unsure: found.unsureZones.map((zone) => ({
      outlinePx: zoneOutline(zone.mask).map(point),
      inCanopy: zone.inCanopy,
      chance: zone.chance,
      areaPx: zone.areaPx * across * down,
    })),
    notes: [
      ...photo.notes,
      ...confidenceNote(found),
      ...found.notes,
      ...measures.notes,
      ...scaleNotes(photo, found),
    ],
  };
}

/** Plus-minus of a length in mm, in px: a rim read too wide makes everything too small. */
function withScaleDoubt(lengthPx: number, plusMinusPx: number, pot: Pot): number {
  return Math.hypot(plusMinusPx, NORMAL_95 * lengthPx * scaleDoubt(pot));
}

/** Where the opening was not seen its height is only what is usual, which is no measure of this photo. */
function rimEllipseOf({ rim }: Pot, across: number, down: number): RimEllipse | null {
  if (!rim.heightSeen) return null;
  const [x, y] = rim.centrePx;
  return {
    centrePx: [x * across, y * down],
    halfWidthPx: rim.halfWidthPx * across,
    halfHeightPx: rim.halfHeightPx * down,
  };
}

/** Lengths in px of the photo and in mm; ratios and angles stay. */
function extrasInPhoto(
  extras: ExtrasPx | null,
  along: number,
  mm: (rasterPx: number) => number | null,
): Extras | null {
  if (extras === null) return null;
  const { circumscribedRadiusPx, inscribedRadiusPx, deviations } = extras;
  return {
    ...extras,
    circumscribedRadiusPx: circumscribedRadiusPx * along,
    circumscribedRadiusMm: mm(circumscribedRadiusPx),
    inscribedRadiusPx: inscribedRadiusPx * along,
    inscribedRadiusMm: mm(inscribedRadiusPx),
    deviations:
      deviations === null
        ? null
        : {
            peakToValleyPx: deviations.peakToValleyPx * along,
            peakPx: deviations.peakPx * along,
            valleyPx: deviations.valleyPx * along,
            rootMeanSquarePx: deviations.rootMeanSquarePx * along,
          },
  };
}

/** A score without its plus-minus says nothing a grower could use, so both or neither. */
function scoreOf(score: number | null, plusMinus: number | null): Score | null {
  return score === null || plusMinus === null ? null : { score, plusMinus };
}

function lopsidednessOf(percent: number | null, plusMinus: number | null): Lopsidedness | null {
  if (percent === null || plusMinus === null) return null;
  const side = Math.abs(percent) <= plusMinus ? 'even' : percent < 0 ? 'left' : 'right';
  return { percent, plusMinus, side };
}

function scaleNotes(photo: PhotoFacts, found: FoundPlant): string[] {
  if (photo.rimMm === null)
    return ['The pot rim’s diameter is not known, so sizes are in px; give it to have mm.'];
  if (found.pot === null) return ['No pot rim was found, so sizes are in px.'];
  return [];
}
