import type { Mask, PointPx, Raster, UprightPhoto } from './raster/raster.ts';
import type { PhotoReport } from './report.ts';

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

export type MeasurePhoto = (photo: UprightPhoto, options: MeasureOptions) => Promise<MeasuredPhoto>;
