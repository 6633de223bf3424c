import type { Pot } from '../canopy/found-plant.ts';

/**
 * Where the plant axis stands: the upright line through the middle of the pot rim.
 *
 * @param pot the rim's two ends, px
 * @returns x of the axis and height of the rim, px
 *
 * Notes: the camera is taken to stand level; a rim that leans by 1° moves the true axis by 1.7 % of the height above
 * the rim.
 *
 * Example: ends (742, 871) and (858, 873) give x 800, rim height 872.
 */
export function axisFromPot({ rimLeftPx, rimRightPx }: Pot): { xPx: number; rimYPx: number } {
  return { xPx: (rimLeftPx[0] + rimRightPx[0]) / 2, rimYPx: (rimLeftPx[1] + rimRightPx[1]) / 2 };
}

/**
 * One standard deviation of the axis' place, px: the doubt of two rim ends, and 1 % of the rim's width for
 * a pot that does not stand quite in the same place or is not quite round (our own allowance).
 */
export function axisUncertaintyPx(pot: Pot, edgeUncertaintyPx: number): number {
  return Math.hypot(edgeUncertaintyPx / Math.SQRT2, 0.01 * rimWidthPx(pot));
}

/** Outer width of the rim as seen, px. */
export function rimWidthPx({ rimLeftPx, rimRightPx }: Pot): number {
  return Math.hypot(rimRightPx[0] - rimLeftPx[0], rimRightPx[1] - rimLeftPx[1]);
}
