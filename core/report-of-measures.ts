import { flowerInReport } from './bloom/flower-in-report.ts';
import { confidenceNote } from './canopy/confidence-note.ts';
import type { FoundPlant, Pot } from './canopy/found-plant.ts';
import { foliageInReport, foliageNotes } from './foliage/foliage-in-report.ts';
import type { LeafReading } from './foliage/read-leaf.ts';
import type { Extras, ExtrasPx } from './measures/extras.ts';
import { flowerShare } from './measures/flower-share.ts';
import { sidedLopsidedness } from './measures/lopsidedness.ts';
import type { SilhouetteMeasures } from './measures/measure-silhouette.ts';
import { NORMAL_95 } from './measures/plus-minus.ts';
import type { PointPx } from './raster/raster.ts';
import {
  type Lopsidedness,
  NO_MEASURES,
  type PhotoReport,
  type PhotoStatus,
  type RimEllipse,
  type Score,
} from './report.ts';
import type { Silhouette } from './silhouette/silhouette.ts';
import { zoneOutline } from './silhouette/zone-outline.ts';
import { frameOf, standNotes, whyNotCompared } from './stand/frame/frame-in-report.ts';
import { plantScale, scaleNotes } from './stand/plant-scale.ts';
import type { StandReading } from './stand/read-stand.ts';
import { collarInReport, collarNotes } from './turned/collar/collar-in-report.ts';
import type { CollarReading, NoCollar } from './turned/collar/read-collar.ts';
import { gapsOf } from './vigour/gaps.ts';
import { statureInReport } from './vigour/stature-in-report.ts';

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
  /** What the stand tells about the photo, px of the copy; left out or `null` when nothing is known of the stand. */
  readonly stand?: StandReading | null;
  /** What the pot's turn collar says; left out or `null` when it was not looked for. */
  readonly collar?: CollarReading | NoCollar | null;
  /** What the leaf's colours say, px of the copy; left out or `null` when they were not read. */
  readonly leaf?: LeafReading | null;
  readonly notes: readonly string[];
}

/** The measures with the view they were taken in, px of that view. */
export interface MeasuredView {
  readonly silhouette: Silhouette;
  readonly measures: SilhouetteMeasures;
  readonly pot: Pot | null;
  /** Px of the view to px of the copy that the plant was cut from. */
  readonly toRaster: (point: PointPx) => PointPx;
  /** Angle between the plant and the camera's axis that was taken out, radians. */
  readonly offAxisRad: number;
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
    collar: collarInReport(photo.collar ?? null),
    frame: frameOf(photo, null),
    notCompared: whyNotCompared(photo, null),
    notes: [...photo.notes, ...standNotes(photo, null)],
  };
}

/**
 * Writes the report: measures in px of the view become px of the photo as stored upright, and mm where sheet or rim give
 * a scale.
 *
 * @param photo sizes, rim diameter in mm, what the stand tells
 * @param found rim, zones and parts in px of the raster
 * @param view measures, px of the view they were taken in
 */
export function reportOfMeasures(photo: PhotoFacts, found: FoundPlant, view: MeasuredView): PhotoReport {
  const { silhouette, measures } = view;
  // The copy's sides are whole px, so the two factors may differ in the fourth digit; lengths take their mean.
  const across = photo.widthPx / photo.rasterWidthPx;
  const down = photo.heightPx / photo.rasterHeightPx;
  const along = (across + down) / 2;
  const inPhoto = ([x, y]: PointPx): PointPx => [x * across, y * down];
  const point = (place: PointPx): PointPx => inPhoto(view.toRaster(place));

  const scale = plantScale(photo, view);
  const mm = (viewPx: number) => (scale === null ? null : viewPx * scale.mmPerPx * scale.outlineShare);

  const { ball, roundness, plusMinus } = measures;
  return {
    ...reportWithoutMeasures(photo, 'no-canopy', ''),
    status: 'measured',
    hint: null,
    frame: frameOf(photo, scale?.mmPerPx ?? null),
    notCompared: whyNotCompared(photo, scale?.mmPerPx ?? null),
    scale: scale === null ? null : { mmPerPx: scale.mmPerPx / along, from: scale.from },
    axis:
      found.pot === null || measures.axis === null
        ? null
        : {
            xPx: point([measures.axis.xPx, measures.axis.rimYPx])[0],
            rimLeftPx: inPhoto(found.pot.rimLeftPx),
            rimRightPx: inPhoto(found.pot.rimRightPx),
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
              scale === null
                ? null
                : mm(Math.hypot(plusMinus.radiusPx, NORMAL_95 * ball.radiusPx * scale.doubtShare)),
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
    foliage: foliageInReport(photo.leaf ?? null, inPhoto),
    flower: flowerInReport(found, scale?.mmPerPx ?? null),
    gaps:
      ball === null
        ? null
        : gapsOf(silhouette, {
            centrePx: ball.centrePx,
            radiusPx: ball.radiusPx,
            rimYPx: measures.axis?.rimYPx ?? null,
            edgePx: found.edgeUncertaintyPx,
          }),
    stature: statureInReport(silhouette, measures.axis, along, mm),
    confidence: found.confidence,
    unsure: found.unsureZones.map((zone) => ({
      outlinePx: zoneOutline(zone.mask).map(inPhoto),
      inCanopy: zone.inCanopy,
      chance: zone.chance,
      areaPx: zone.areaPx * across * down,
    })),
    notes: [
      ...photo.notes,
      ...standNotes(photo, scale?.mmPerPx ?? null),
      ...collarNotes(photo.collar ?? null, photo.turnDeg),
      ...confidenceNote(found),
      ...found.notes,
      ...measures.notes,
      ...foliageNotes(photo.leaf ?? null),
      ...scaleNotes(photo, found, scale),
    ],
  };
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
  return percent === null || plusMinus === null ? null : sidedLopsidedness(percent, plusMinus);
}
