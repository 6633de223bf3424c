import type { Mask, PointPx } from '../raster/raster.ts';

/** The camera before the pot; one camera place for all views of a sitting. Pictures are those of a level camera there. */
export type Camera = NearCamera | SupposedCamera;

export interface NearCamera {
  /** From the camera to the plant axis, mm, above 0. */
  readonly distanceMm: number;
  /** How far the camera stands above the rim plane, mm. */
  readonly heightMm: number;
}

/** A camera whose distance is not known in the plan's unit: it is supposed to stand at a usual one, which is nearer the truth than far away. */
export interface SupposedCamera {
  /** From the camera to the plant axis, in radii of the plant's ball. */
  readonly distanceInRadii: number;
  /** How steeply it looks down on the middle of the rim plane, degrees. */
  readonly elevationDeg: number;
}

/** One photo of a plant at one turn of its pot, already cut out and measured by itself. */
export interface TurnedView {
  /** Azimuth that faces the camera, degrees; `null` when not told. */
  readonly turnDeg: number | null;
  /** Canopy, px; all further px are px of this mask. */
  readonly canopy: Mask;
  /** Millimetres a px at the plane of the axis; `null` when unknown. */
  readonly mmPerPx: number | null;
  readonly axisXPx: number;
  readonly rimYPx: number;
  readonly axisFrom: AxisSource;
  /** Half the rim's width: below the rim the pot hides what lies behind it. `null` when unknown. */
  readonly potHalfWidthPx: number | null;
  /** The view's own ball, px. */
  readonly ballRadiusPx: number;
  /** % of the ball's radius, right positive, with its 95 % repeatability. */
  readonly lopsidednessPercent: number;
  readonly lopsidednessPlusMinus: number;
  /** Where the rim's middle stands across the photo as taken; `null` when unknown. */
  readonly potPlace: PotPlace | null;
  /** A place of this view's picture in px of the photo as stored upright. */
  readonly toPhoto: (placePx: PointPx) => PointPx;
}

/**
 * How the axis of a view is known: from its own rim; from the rim of the sitting's other views; or not at all, so that the fit of the views'
 * middles has to find it, and `axisXPx` is a common place near it.
 */
export type AxisSource = 'rim' | 'other-views' | 'middles';

/** Where a pot stands on the picture of a camera that stands still. */
export interface PotPlace {
  readonly xPx: number;
  readonly mmPerPx: number;
}

/** Millimetres, or px of the first view where the scale of a view is unknown. */
export const PLAN_UNITS = ['mm', 'px'] as const;
export type PlanUnit = (typeof PLAN_UNITS)[number];

/**
 * A point of the plant: `u` from the axis towards azimuth 0, `v` towards azimuth 90, `h` up from the rim plane.
 * Azimuths run anticlockwise seen from above, so a point at azimuth a and distance d has u = d cos a, v = d sin a.
 */
export type PlantPoint = readonly [u: number, v: number, h: number];
