import { degOf, wholeTurn } from './circular-statistics.ts';
import type { ViewSight } from './sight-lines.ts';

/** Seen from above: no canopy lies beyond this line, and some touches it. */
export interface SupportLine {
  /** Direction square to the line, away from the axis, degrees. */
  readonly azimuthDeg: number;
  /** From the axis to the line in that direction; below 0 when the canopy does not reach the axis. */
  readonly distance: number;
}

/**
 * The line that a silhouette's outermost place draws on the plan.
 *
 * @param sight the view
 * @param x outermost place on the picture, right of the axis, plan's unit
 * @param side which end of the silhouette it is
 *
 * How: the upright plane through the camera and that place touches the canopy. From far away its azimuth is turn + 90 for the right end
 * and turn − 90 for the left; from a near camera it leans towards the camera by atan(x ÷ distance).
 *
 * Example: turn 0, far camera, x = 120 at the right gives azimuth 90, distance 120.
 */
export function supportLine({ turnRad, camera }: ViewSight, x: number, side: 'left' | 'right'): SupportLine {
  const outwards = side === 'right' ? 1 : -1;
  const lean = camera === null ? 0 : Math.atan2(outwards * x, camera.distanceMm);
  return {
    azimuthDeg: wholeTurn(degOf(turnRad + outwards * (Math.PI / 2 - lean))),
    distance: outwards * x * Math.cos(lean),
  };
}
