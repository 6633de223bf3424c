import type { PointPx } from '../../raster/raster.ts';
import type { Homography } from '../frame/frame-fit.ts';
import type { SheetMark } from './ring-mark.ts';

/** How many marks were seen decides how much the sheet can tell. */
export const SHEET_FITS = ['perspective', 'affine', 'similarity'] as const;
/** `perspective`: four marks or more. `affine`: three. `similarity`: two, or three in a row; the sheet is taken to face the camera. */
export type SheetFit = (typeof SHEET_FITS)[number];

/** What the stand sheet tells about a photo. Px of the raster; paper mm: x right, y down from the sheet's top-left corner. */
export interface SheetReading {
  readonly ok: true;
  readonly marks: readonly SheetMark[];
  readonly fit: SheetFit;
  /** Paper mm to photo px. */
  readonly paperToPhoto: Homography;
  /** Root mean square distance of the marks from where the map puts them; `null` with fewer than four. */
  readonly residualPx: number | null;
  /** At the sheet's middle, for a thing that faces the camera there. */
  readonly mmPerPxAtSheet: number;
  /** One standard deviation of `mmPerPxAtSheet`. */
  readonly mmPerPxDoubt: number;
  /** `null` with a reason in `notes` when it cannot be known. */
  readonly pose: SheetPose | null;
  readonly greys: GreyReading;
  /** Which way the sheet's arrow points in the photo, degrees clockwise from straight up, -180 to 180. */
  readonly arrowTurnDeg: number;
  /** Where the arrow says the light comes from, as seen from the camera; `null` when it points where no light can be. */
  readonly lightSide: ArrowLight | null;
  /** Plain sentences: what was not seen and what that costs. */
  readonly notes: readonly string[];
}

/** Sides that the arrow on a sheet can point to. */
export const ARROW_LIGHTS = ['left', 'right', 'above', 'behind-plant', 'behind-camera'] as const;
export type ArrowLight = (typeof ARROW_LIGHTS)[number];

/** A sheet that cannot be read, and what to do. */
export interface NoSheet {
  readonly ok: false;
  readonly reason: 'no-marks' | 'one-mark' | 'unclear' | 'other-paper';
  readonly hint: string;
}

/** How the sheet stands before the camera. */
export interface SheetPose {
  readonly focalLengthPx: number;
  /** `given` by the caller, or read off the sheet's own perspective. */
  readonly focalLengthFrom: 'given' | 'perspective';
  /** Camera to the sheet's middle along the camera's axis, mm, and one standard deviation. */
  readonly distanceMm: number;
  readonly distanceDoubtMm: number;
  /** Between the sheet's normal and the camera's axis, degrees, 0 when it faces the camera; `null` with few marks. */
  readonly tiltDeg: number | null;
  /** Where the camera's axis meets the photo: taken to be its middle. */
  readonly principalPx: PointPx;
  /** Unit normal of the sheet towards the camera, in the camera's axes: x right, y down, z away; `null` with few marks. */
  readonly normal: Point3 | null;
}

export type Point3 = readonly [x: number, y: number, z: number];

/** What the grey patches tell of the light. */
export interface GreyReading {
  readonly state: 'ok' | 'too-bright' | 'too-dark' | 'not-seen';
  /** What to multiply linear red, green and blue by so that the greys come out grey; green is 1. `null` unless `ok`. */
  readonly gains: readonly [red: number, green: number, blue: number] | null;
  /** Largest disagreement between two usable patches' gains, as a share; `null` with fewer than two patches. */
  readonly spread: number | null;
}
