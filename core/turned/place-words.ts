import { wholeTurn } from './circular-statistics.ts';
import { clockOfAzimuth } from './clock-of-azimuth.ts';

/**
 * A place on a clock seen from above with azimuth 0 at 6: "3 o’clock", "half past 4" where the place is an eighth turn.
 * Measured directions are given in whole hours; half hours are for places that are set, not measured.
 */
export function placeWords(azimuthDeg: number): string {
  const halves = wholeTurn(180 - azimuthDeg) / 15;
  const nearest = Math.round(halves);
  const isSetHalf = Math.abs(halves - nearest) < 0.01 && nearest % 2 === 1;
  if (!isSetHalf) return `${clockOfAzimuth(azimuthDeg)} o’clock`;
  return `half past ${Math.floor(nearest / 2) || 12}`;
}

/** "the 3 o’clock side", "the side at half past 4". */
export function sideWords(azimuthDeg: number): string {
  const place = placeWords(azimuthDeg);
  return place.startsWith('half') ? `the side at ${place}` : `the ${place} side`;
}
