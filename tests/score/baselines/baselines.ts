import type { OpenCvDoor } from '../../../core/opencv/door.ts';
import type { Mask, Raster } from '../../../core/raster/raster.ts';
import { cutByBackdropAndGrabCut } from './backdrop-and-grab-cut.ts';
import { cutByExcessGreen } from './excess-green.ts';
import { cutByExcessGreenMinusRed } from './excess-green-minus-red.ts';
import { cutByGrabCutRectangle } from './grab-cut-rectangle.ts';

/** A well-known simple way of cutting a plant out, to compare with; used for scoring only. */
export interface Baseline {
  readonly name: string;
  /** The canopy on a copy of the photo. */
  readonly cut: (raster: Raster, door: OpenCvDoor) => Mask;
}

/** Longer side of the copy that the baselines see, px. */
export const BASELINE_SIDE_PX = 640;

export const BASELINES: readonly Baseline[] = [
  { name: 'excess green, Otsu', cut: cutByExcessGreen },
  { name: 'excess green minus red', cut: cutByExcessGreenMinusRed },
  { name: 'GrabCut from a rectangle', cut: cutByGrabCutRectangle },
  { name: 'backdrop colours, GrabCut', cut: cutByBackdropAndGrabCut },
];
