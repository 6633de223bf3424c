import type { PointPx } from '../raster/raster.ts';

const FULL_TURN = 2 * Math.PI;

/**
 * The directions about a centre that the pot does not hide.
 *
 * Angles are screen angles: 0 to the right, growing clockwise (down is a quarter turn), because y points
 * down. The arc runs clockwise from `startRad` over `sweepRad`.
 */
export interface OpenArc {
  readonly startRad: number;
  /** Above 0 and at most 2π; 2π means the whole circle. */
  readonly sweepRad: number;
}

export const WHOLE_CIRCLE: OpenArc = { startRad: 0, sweepRad: FULL_TURN };

/** The pot rim's outer ends, px. */
export interface RimEnds {
  readonly rimLeftPx: PointPx;
  readonly rimRightPx: PointPx;
}

/**
 * The arc left open by the pot: everything but the directions from the centre that pass between the rim's
 * ends, downwards.
 *
 * @param centre centre of the ball, px
 * @param rim the rim's ends, px, or `null` when no pot is seen
 * @returns the open arc; the whole circle without a pot
 *
 * Notes: a centre below the rim (a plant hanging over its pot) leaves less than half a circle open.
 *
 * Example: a rim 200 wide, 100 below the centre, hides a quarter turn and leaves 270° open.
 */
export function openArc(centre: PointPx, rim: RimEnds | null): OpenArc {
  if (rim === null) return WHOLE_CIRCLE;
  const toLeft = Math.atan2(rim.rimLeftPx[1] - centre[1], rim.rimLeftPx[0] - centre[0]);
  const toRight = Math.atan2(rim.rimRightPx[1] - centre[1], rim.rimRightPx[0] - centre[0]);
  const hiddenRad = (((toLeft - toRight) % FULL_TURN) + FULL_TURN) % FULL_TURN;
  return { startRad: toLeft, sweepRad: FULL_TURN - hiddenRad };
}

/** The open arc in degrees, above 0 and at most 360. */
export function openArcDeg(arc: OpenArc): number {
  return (arc.sweepRad * 180) / Math.PI;
}

/** Whether the arc is the whole circle, so that its end joins its start. */
export function isWholeCircle(arc: OpenArc): boolean {
  return arc.sweepRad >= FULL_TURN - 1e-9;
}
