import type { Pot } from '../canopy/found-plant.ts';
import { requirePositive } from '../errors/expect.ts';
import { rimHeightDoubtPx, rimWidthPx } from './axis.ts';

/**
 * Millimetres a px at the plant axis, from the pot rim's outer diameter.
 *
 * @param pot the rim's two ends, px
 * @param rimMm outer diameter, mm, above 0
 * @returns mm a px, or `null` when the rim has no width
 *
 * Notes: the rim's ends lie in the plane of the axis, so the plant's outline is scaled at its own distance. What stands
 * nearer to the camera by d reads larger by Z ÷ (Z − d), Z the camera's distance: 5 % for 100 mm at 2 m.
 *
 * Example: a rim of 116 px and 130 mm gives 1.12 mm a px.
 */
export function scaleFromRim(pot: Pick<Pot, 'rimLeftPx' | 'rimRightPx'>, rimMm: number): number | null {
  requirePositive(rimMm, 'rimMm');
  const widthPx = rimWidthPx(pot);
  return widthPx > 0 ? rimMm / widthPx : null;
}

/**
 * One standard deviation of the scale as a share of it: the doubt of the rim's width ÷ that width. Where the sides taper, the doubt of
 * the rim's row is in it.
 */
export function scaleDoubt(pot: Pot): number {
  return Math.hypot(pot.rimDoubtPx, 2 * pot.rimTaper * rimHeightDoubtPx(pot)) / rimWidthPx(pot);
}
