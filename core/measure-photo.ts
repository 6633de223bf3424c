import { decidePlant } from './canopy/decide-plant.ts';
import type { FoundPlant, NoPlant } from './canopy/found-plant.ts';
import { type Gathered, gatherEvidence } from './canopy/gather-evidence.ts';
import { NOTES } from './canopy/hints.ts';
import type { KnownOfPlant } from './canopy/known.ts';
import { type Stroke, scaleStroke } from './canopy/stroke.ts';
import type { NormalLeaf } from './foliage/normal-leaf.ts';
import { readLeaf } from './foliage/read-leaf.ts';
import { measureSilhouette } from './measures/measure-silhouette.ts';
import { openOpenCv } from './opencv/door.ts';
import { plantInPhoto } from './plant-in-photo.ts';
import type { Mask, PointPx, Raster, UprightPhoto } from './raster/raster.ts';
import type { PhotoReport } from './report.ts';
import {
  type MeasuredView,
  type PhotoFacts,
  reportOfMeasures,
  reportWithoutMeasures,
} from './report-of-measures.ts';
import { NO_OUTLINES, type PartsOutlines, partsOutlines } from './silhouette/parts-outlines.ts';
import { reduceOutline } from './silhouette/reduce-outline.ts';
import { readSilhouette, type Silhouette } from './silhouette/silhouette.ts';
import { rollDoubtDeg } from './stand/axis.ts';
import type { KnownStand } from './stand/known-stand.ts';
import { readStand, type StandReading } from './stand/read-stand.ts';
import { potByHand, type RimByHand } from './stand/rim-by-hand.ts';
import { uprightPlant } from './stand/upright-plant.ts';
import { uprightView } from './stand/upright-view.ts';
import { collarOnPot } from './turned/collar/collar-in-report.ts';

/** What is known beside the photo. */
export interface MeasureOptions extends Omit<KnownOfPlant, 'without'> {
  /** Name printed in the report. */
  readonly photoName: string;
  /** Outer diameter of the pot rim, mm; `null` when unknown: px only. */
  readonly rimMm: number | null;
  /** Azimuth that faces the camera, degrees; `null` when not told. */
  readonly turnDeg: number | null;
  /** The stand the photo was taken on; `null` when nothing is known of it. */
  readonly stand: KnownStand | null;
  /** The plant's leaf in good health; left out or `null` before any was learned. */
  readonly normalLeaf?: NormalLeaf | null;
}

/** A photo's report with the pictures behind it. */
export interface MeasuredPhoto {
  readonly report: PhotoReport;
  /** The cut-out in the working raster's px, `null` when not measured. */
  readonly found: FoundPlant | null;
  /** Canopy in the working raster's px, `null` when not measured. */
  readonly canopy: Mask | null;
  /** Outer contour of the silhouette in photo px, closed, clockwise on screen; empty when not measured. */
  readonly outlinePx: readonly PointPx[];
  /** Closed contours of the other parts in photo px; empty when not measured. */
  readonly partsOutlines: PartsOutlines;
  /** To learn the plant's normal leaf from; `null` when not measured, or white is not known. */
  readonly leafLook: NormalLeaf | null;
}

/** Points of the outline handed on: enough for a drawing as wide as a screen. */
const MOST_OUTLINE_POINTS = 600;

/** A photo on which every voice was heard: ready to be measured, again after each stroke. */
export interface GatheredPhoto {
  readonly photo: UprightPhoto;
  readonly options: MeasureOptions;
  readonly gathered: Gathered | NoPlant;
  /** What the stand tells about the photo; `null` when nothing is known of it. */
  readonly stand: StandReading | null;
  readonly notes: readonly string[];
}

/**
 * Measures one photo: cuts the canopy out and takes every measure of its silhouette.
 *
 * @param photo upright, possibly reduced
 * @param options name, rim diameter in mm, what is known of plant and stand, the turn in degrees
 * @param strokes the grower's strokes, px of the photo as stored upright, oldest first
 * @returns the report in px of the photo as stored upright, with mask and outline
 *
 * Notes: deterministic. A photo that cannot be measured is a report with another status and a hint, not an error.
 *
 * Example: `await measurePhoto(photo, { ...NOTHING_KNOWN, photoName: 'a.jpg', rimMm: 130, turnDeg: 0 })`
 */
export async function measurePhoto(
  photo: UprightPhoto,
  options: MeasureOptions,
  strokes: readonly Stroke[] = [],
): Promise<MeasuredPhoto> {
  return measureGathered(await gatherPhoto(photo, options), strokes);
}

/** The costly first half of `measurePhoto`: hears every voice. Keep it while strokes are drawn. */
export async function gatherPhoto(photo: UprightPhoto, options: MeasureOptions): Promise<GatheredPhoto> {
  const { empty, note } = usableEmpty(photo.raster, options.empty);
  const { network, colours, lastOutline } = options;
  const gathered = await gatherEvidence(photo.raster, { empty, network, colours, lastOutline });
  const stand =
    options.stand === null
      ? null
      : readStand(await openOpenCv(), photo.raster, options.stand, plantInPhoto(gathered));
  return { photo, options, gathered, stand, notes: note === null ? [] : [note] };
}

/**
 * The second half of `measurePhoto`: decides with the strokes and measures.
 *
 * @param rimByHand the rim's ends as the grower set them, px of the photo as stored upright; `null` for those found
 */
export function measureGathered(
  gathered: GatheredPhoto,
  strokes: readonly Stroke[],
  rimByHand: RimByHand | null = null,
): MeasuredPhoto {
  return measureCutOut(gathered, cutGathered(gathered, strokes, rimByHand));
}

/** The cut-out, px of the raster; or why there is none. */
export type CutOut = FoundPlant | NoPlant;

/** Its first step: decides with the strokes on the canopy; a caller may draw it while it is measured. */
export function cutGathered(
  { photo, gathered }: GatheredPhoto,
  strokes: readonly Stroke[],
  rimByHand: RimByHand | null = null,
): CutOut {
  const { raster, widthPx, heightPx } = photo;
  const onRaster = strokes.map((stroke) =>
    scaleStroke(stroke, raster.width / widthPx, raster.height / heightPx),
  );
  const cutOut = gathered.ok ? decidePlant(gathered, onRaster) : gathered;
  return rimByHand === null ? cutOut : withRim(cutOut, rimByHand, photo);
}

/** Its second step: measures what `cutGathered` gave. */
export function measureCutOut(
  { photo, options, gathered, stand, notes }: GatheredPhoto,
  found: CutOut,
): MeasuredPhoto {
  const { raster, widthPx, heightPx } = photo;
  const { rimMm } = options;
  const cameraDistanceMm = options.stand?.cameraDistanceMm ?? null;
  return measureFound(found, {
    name: options.photoName,
    widthPx,
    heightPx,
    rasterWidthPx: raster.width,
    rasterHeightPx: raster.height,
    rimMm,
    turnDeg: options.turnDeg,
    stand,
    collar: found.ok ? collarOnPot(raster, found.pot, { rimMm, cameraDistanceMm }) : null,
    leaf:
      gathered.ok && found.ok
        ? readLeaf(gathered.door, raster, found.parts, {
            reference: options.stand?.reference ?? null,
            stand,
            normal: options.normalLeaf ?? null,
            petalsTold: gathered.shares !== null,
          })
        : null,
    notes,
  });
}

/** The cut-out with the rim as the grower set it. */
function withRim(
  cutOut: FoundPlant | NoPlant,
  { leftPx, rightPx }: RimByHand,
  { raster, widthPx, heightPx }: UprightPhoto,
): FoundPlant | NoPlant {
  if (!cutOut.ok) return cutOut;
  const inRaster = ([x, y]: PointPx): PointPx => [
    (x * raster.width) / widthPx,
    (y * raster.height) / heightPx,
  ];
  const pot = potByHand(cutOut.pot, { leftPx: inRaster(leftPx), rightPx: inRaster(rightPx) });
  return { ...cutOut, pot, notes: cutOut.notes.filter((note) => note !== NOTES.noPot) };
}

/**
 * Measures a plant already cut out of its photo. Pure: the same cut-out always gives the same report.
 *
 * @param found the cut-out, px of the raster, or why there is none
 * @param photo sizes, name, rim diameter
 */
export function measureFound(found: FoundPlant | NoPlant, photo: PhotoFacts): MeasuredPhoto {
  if (!found.ok) {
    const report = reportWithoutMeasures(photo, found.reason, found.hint);
    const silhouette = found.cutOut === null ? null : readSilhouette(found.cutOut.canopy);
    if (found.cutOut === null || silhouette === null) return { report, ...NOTHING_CUT_OUT };
    return { report, ...drawingOf(found.cutOut, silhouette, photo) };
  }
  const silhouette = readSilhouette(found.canopy);
  if (silhouette === null) {
    const hint =
      'No leaf was found in this photo. Stand the plant alone before a plain backdrop and photograph it again.';
    return { report: reportWithoutMeasures(photo, 'no-canopy', hint), ...NOTHING_CUT_OUT };
  }
  return {
    report: reportOfMeasures(photo, found, measureUpright(found, silhouette, photo)),
    ...drawingOf(found, silhouette, photo),
  };
}

/** Measures the cut-out in the stand's upright view, or as it stands when nothing else is known or needed. */
function measureUpright(
  found: FoundPlant,
  asSeen: Silhouette,
  { stand, ...photo }: PhotoFacts,
): MeasuredView {
  const rollDeg = rollDoubtDeg(stand?.frame?.fit.doubt.turnDeg ?? null);
  const view = stand
    ? uprightView({
        widthPx: photo.rasterWidthPx,
        heightPx: photo.rasterHeightPx,
        turnDeg: stand.frame?.fit.turnDeg ?? 0,
        focalLengthPx: stand.focalLengthPx,
        plantPx: asSeen.hullMiddlePx,
      })
    : null;
  const upright = view === null ? null : uprightPlant(found, view);
  const silhouette = upright === null ? null : readSilhouette(upright.plant.canopy);
  if (view === null || upright === null || silhouette === null) {
    return {
      silhouette: asSeen,
      measures: measureSilhouette(asSeen, found, rollDeg),
      pot: found.pot,
      toRaster: (point) => point,
      offAxisRad: 0,
    };
  }
  return {
    silhouette,
    measures: measureSilhouette(silhouette, upright.plant, rollDeg),
    pot: upright.plant.pot,
    toRaster: upright.toRaster,
    offAxisRad: view.offAxisRad,
  };
}

/** What is drawn on the photo, px of the photo as stored upright. */
function drawingOf(
  found: FoundPlant,
  silhouette: Silhouette,
  photo: PhotoFacts,
): Omit<MeasuredPhoto, 'report'> {
  const across = photo.widthPx / photo.rasterWidthPx;
  const down = photo.heightPx / photo.rasterHeightPx;
  const inPhoto = (loop: readonly PointPx[]) => loop.map(([x, y]): PointPx => [x * across, y * down]);
  const outlines = partsOutlines(found.parts);
  return {
    found,
    canopy: found.canopy,
    outlinePx: inPhoto(reduceOutline(silhouette.loops[0] as readonly PointPx[], MOST_OUTLINE_POINTS)),
    partsOutlines: {
      flower: outlines.flower.map(inPhoto),
      pot: outlines.pot.map(inPhoto),
      soil: outlines.soil.map(inPhoto),
      support: outlines.support.map(inPhoto),
    },
    leafLook: photo.leaf?.look ?? null,
  };
}

/** What goes with a report that measured nothing. */
const NOTHING_CUT_OUT = {
  found: null,
  canopy: null,
  outlinePx: [],
  partsOutlines: NO_OUTLINES,
  leafLook: null,
} as const;

/** An empty photo of another size cannot be laid over this one. */
function usableEmpty(raster: Raster, empty: Raster | null): { empty: Raster | null; note: string | null } {
  if (empty === null) return { empty, note: null };
  if (empty.width === raster.width && empty.height === raster.height) return { empty, note: null };
  const note = `The empty photo was not used: it is ${empty.width} × ${empty.height} px and this photo ${raster.width} × ${raster.height} px as measured. Take both with the same camera, zoom and way up.`;
  return { empty: null, note };
}
