/**
 * The hour at which a direction stands in the photo: 12 on top, 3 at the right.
 *
 * @param angleRad screen angle, 0 to the right and growing clockwise
 * @returns whole hour 1–12
 *
 * Example: 0 is 3 o'clock, a quarter turn (down) is 6.
 */
export function clockOf(angleRad: number): number {
  const hours = Math.round((angleRad * 6) / Math.PI + 3);
  return ((((hours - 1) % 12) + 12) % 12) + 1;
}
