/**
 * The hour of an azimuth on the clock seen from above with the mark at 6.
 *
 * @param azimuthDeg degrees, anticlockwise from the mark
 * @returns 1 to 12: azimuth 0 → 6, 90 → 3, 180 → 12, 270 → 9
 */
export function clockOfAzimuth(azimuthDeg: number): number {
  const hour = Math.round(6 - azimuthDeg / 30);
  return ((((hour - 1) % 12) + 12) % 12) + 1;
}
