import type { PointPx } from '../../raster/raster.ts';
import type { FrameDoubt } from './frame-doubt.ts';

/** Nine numbers, row by row: `[x', y', w'] = H · [x, y, 1]`, the point is `(x' / w', y' / w')`. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** How far the camera stands from where it stood; `limits.ts` holds the bounds. `far`: told, scores not compared. */
export const STANDINGS = ['same', 'moved', 'far'] as const;
export type Standing = (typeof STANDINGS)[number];

/** How a photo lies over the stand's reference picture. Px of the raster. */
export interface FrameFit {
  /** What the fit rests on: the stand sheet's ring marks, or what is seen of the stand itself. */
  readonly from: 'marks' | 'features';
  /** Photo px to reference px: a similarity, unless four marks or more show perspective. */
  readonly toStand: Homography;
  /** Where the reference's middle moved to in the photo, x right, y down. */
  readonly shiftPx: PointPx;
  /** By how much the picture's content is turned in this photo, clockwise on screen positive. */
  readonly turnDeg: number;
  /** How large the stand reads in this photo, as a factor of the reference: above 1 the camera is nearer. */
  readonly zoom: number;
  /** Root mean square of what the fit leaves over, px of the raster. */
  readonly residualPx: number;
  readonly doubt: FrameDoubt;
  readonly standing: Standing;
}

/** A frame that cannot be told, and what to do. */
export interface NoFrame {
  readonly ok: false;
  /**
   * `size`: photo and reference are of different size. `plain`: nothing that could be recognised. `unlike`: there is, but the
   * photo does not show it.
   */
  readonly cause: 'size' | 'plain' | 'unlike';
  /** Plain sentences for the report's notes. */
  readonly reason: string;
}
