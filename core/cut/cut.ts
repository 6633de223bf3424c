import type { Sureness } from '../advice/advice.ts';
import type { PointPx } from '../raster/raster.ts';
import type { PlantPoint } from '../turned/turned-view.ts';

/** A tip stop takes the growing tip with a joint or two; a deep stop takes the stem further back. */
export const STOP_DEPTHS = ['tip', 'deep'] as const;
export type StopDepth = (typeof STOP_DEPTHS)[number];

/** One stem to shorten: where, how much and why. What cannot be known is `null`. */
export interface Cut {
  /** The same for the same place on the same sitting, so that a tick stays with its stem. */
  readonly id: string;
  /** Anticlockwise from the mark, degrees; `null` in one photo, which shows no depth. */
  readonly azimuthDeg: number | null;
  /** Hour seen from above with the mark at 6; `null` in one photo. */
  readonly clockFromAbove: number | null;
  /** Hour in the photo about the ball's centre, 12 on top; `null` for a turned sitting. */
  readonly clockInPhoto: number | null;
  /** Height of the cut mark above the rim; `null` without a scale or a rim. */
  readonly heightMm: number | null;
  /** How far the tip stands beyond where the other tips end; `null` without a scale. */
  readonly excessMm: number | null;
  /** Its 95 % uncertainty; `null` where it is not known. */
  readonly plusMinusMm: number | null;
  /** How much of the stem goes, down to the ball to cut to; `null` without a scale. */
  readonly takeOffMm: number | null;
  /** The same as a share of the present ball's radius, %, known without a scale. */
  readonly takeOffPercent: number;
  readonly stop: StopDepth;
  readonly kind: 'shoot' | 'shoulder';
  /** In the photo; `null` for a turned sitting, whose places are `tipMm` and `cutMm`. */
  readonly tipPx: PointPx | null;
  readonly cutPx: PointPx | null;
  /** In the plant's own space; `null` in one photo. */
  readonly tipMm: PlantPoint | null;
  readonly cutMm: PlantPoint | null;
  /** Base of a side shoot seen just below the cut mark, above which to cut; `null` when none is seen. */
  readonly aboveShootPx: PointPx | null;
  readonly why: string;
  readonly sure: Sureness;
}
