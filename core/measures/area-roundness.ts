import { requirePositive } from '../errors/expect.ts';

/**
 * Area ÷ area of the smallest circle round it.
 *
 * @param area any square unit, above 0
 * @param circumscribedRadius of the smallest circle round all of it, same unit, above 0
 * @returns above 0 and at most 1; 1 for a disc
 *
 * Notes: this is the square of Wadell's circularity, the diameter of the disc of equal area ÷ that of the circumscribed
 * circle. One long stem widens the circle and takes the figure down for the whole plant. A canopy cut off flat by its pot
 * reads below 1 even when the rest is round (a half disc: 0.5).
 *
 * Reference: Wadell (1933), Sphericity and roundness of rock particles; both forms in ISO 9276-6:2008.
 *
 * Example: a square has 2 ÷ π = 0.637.
 */
export function areaRoundness(area: number, circumscribedRadius: number): number {
  requirePositive(area, 'area');
  requirePositive(circumscribedRadius, 'circumscribedRadius');
  return area / (Math.PI * circumscribedRadius ** 2);
}
