import { findPlant } from './canopy/find-plant.ts';
import type { FoundPlant, NoPlant } from './canopy/found-plant.ts';
import { measureSilhouette } from './measures/measure-silhouette.ts';
import type { Mask, PointPx, Raster, UprightPhoto } from './raster/raster.ts';
import type { PhotoReport } from './report.ts';
import { type PhotoFacts, reportOfMeasures, reportWithoutMeasures } from './report-of-measures.ts';
import { reduceOutline } from './silhouette/reduce-outline.ts';
import { readSilhouette } from './silhouette/silhouette.ts';

/** What is known beside the photo. */
export interface MeasureOptions {
  /** Name printed in the report. */
  readonly photoName: string;
  /** Outer diameter of the pot rim, mm; `null` when unknown: px only. */
  readonly rimMm: number | null;
  /** The same stand without a plant, same camera place; `null` when there is none. */
  readonly empty: Raster | null;
  /** Azimuth that faces the camera, degrees; `null` when not told. */
  readonly turnDeg: number | null;
}

/** A photo's report with the pictures behind it. */
export interface MeasuredPhoto {
  readonly report: PhotoReport;
  /** Canopy in the working raster's px, `null` when not measured. */
  readonly canopy: Mask | null;
  /** Outer contour of the silhouette in photo px, closed, clockwise on screen; empty when not measured. */
  readonly outlinePx: readonly PointPx[];
}

/** Points of the outline handed on: enough for a drawing as wide as a screen. */
const MOST_OUTLINE_POINTS = 600;

/**
 * Measures one photo: cuts the canopy out and takes every measure of its silhouette.
 *
 * @param photo upright, possibly reduced
 * @param options name, rim diameter in mm, the empty stand, the turn in degrees
 * @returns the report in px of the photo as stored upright, with mask and outline
 *
 * Notes: deterministic. A photo that cannot be measured is a report with another status and a hint, not an error.
 *
 * Example: `await measurePhoto(photo, { photoName: 'a.jpg', rimMm: 130, empty: null, turnDeg: 0 })`
 */
export async function measurePhoto(photo: UprightPhoto, options: MeasureOptions): Promise<MeasuredPhoto> {
  const { empty, note } = usableEmpty(photo.raster, options.empty);
  const found = await findPlant(photo.raster, { empty });
  return measureFound(found, {
    name: options.photoName,
    widthPx: photo.widthPx,
    heightPx: photo.heightPx,
    rasterWidthPx: photo.raster.width,
    rasterHeightPx: photo.raster.height,
    rimMm: options.rimMm,
    turnDeg: options.turnDeg,
    notes: note === null ? [] : [note],
  });
}

/**
 * Measures a plant already cut out of its photo. Pure: the same cut-out always gives the same report.
 *
 * @param found the cut-out, px of the raster, or why there is none
 * @param photo sizes, name, rim diameter
 */
export function measureFound(found: FoundPlant | NoPlant, photo: PhotoFacts): MeasuredPhoto {
  if (!found.ok) {
    return { report: reportWithoutMeasures(photo, found.reason, found.hint), canopy: null, outlinePx: [] };
  }
  const silhouette = readSilhouette(found.canopy);
  if (silhouette === null) {
    const hint =
      'No leaf was found in this photo. Stand the plant alone before a plain backdrop and photograph it again.';
    return { report: reportWithoutMeasures(photo, 'no-canopy', hint), canopy: null, outlinePx: [] };
  }
  const measures = measureSilhouette(silhouette, found);
  const across = photo.widthPx / photo.rasterWidthPx;
  const down = photo.heightPx / photo.rasterHeightPx;
  return {
    report: reportOfMeasures(photo, found, silhouette, measures),
    canopy: found.canopy,
    outlinePx: reduceOutline(silhouette.loops[0] as readonly PointPx[], MOST_OUTLINE_POINTS).map(
      ([x, y]): PointPx => [x * across, y * down],
    ),
  };
}

/** An empty photo of another size cannot be laid over this one. */
function usableEmpty(raster: Raster, empty: Raster | null): { empty: Raster | null; note: string | null } {
  if (empty === null) return { empty, note: null };
  if (empty.width === raster.width && empty.height === raster.height) return { empty, note: null };
  const note = `The empty photo was not used: it is ${empty.width} × ${empty.height} px and this photo ${raster.width} × ${raster.height} px as measured. Take both with the same camera, zoom and way up.`;
  return { empty: null, note };
}
