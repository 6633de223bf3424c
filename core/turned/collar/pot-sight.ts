import { degOf, radOf } from '../circular-statistics.ts';

/** Where a round band on the pot stands in the photo, px. */
export interface PotSight {
  /** Column of the pot's axis. */
  readonly axisXPx: number;
  /** Radius of the band at the depth of the axis. */
  readonly radiusPx: number;
  /** Radius ÷ distance from the camera: 0 when far away. */
  readonly nearness: number;
}

/** Radius ÷ distance of a usual pot before a usual camera: 65 mm at 1.4 m. */
export const USUAL_NEARNESS = 0.046;

/**
 * The angle on the pot that is seen at a column: 0 faces the camera, to the right positive, degrees.
 *
 * Notes: of a pinhole camera that stands level: x = r sin φ ÷ (1 − p cos φ), r the radius in px, p the nearness. Columns beyond the outline
 * give the outline's angle.
 */
export function angleAtColumn(xPx: number, { axisXPx, radiusPx, nearness }: PotSight): number {
  const aside = (xPx - axisXPx) / radiusPx;
  const sine = aside / Math.hypot(1, aside * nearness);
  return degOf(Math.asin(Math.max(-1, Math.min(1, sine))) - Math.atan(aside * nearness));
}

/** The column at which an angle on the pot is seen, px. */
export function columnOfAngle(angleDeg: number, { axisXPx, radiusPx, nearness }: PotSight): number {
  const angle = radOf(angleDeg);
  return axisXPx + (radiusPx * Math.sin(angle)) / (1 - nearness * Math.cos(angle));
}

/** How much nearer than the axis, and so larger, a place on the pot is. */
export function enlargementAt(angleDeg: number, { nearness }: PotSight): number {
  return 1 / (1 - nearness * Math.cos(radOf(angleDeg)));
}
