import { requireAtLeast, requireFinite } from '../errors/expect.ts';

/** Directions summed up: where they point on the whole, and how much they agree. */
export interface CircularSummary {
  /** Degrees, 0 up to 360; `null` when the directions cancel out. */
  readonly meanDeg: number | null;
  /** Mean resultant length R: 0 when they cancel out, 1 when all are the same. */
  readonly resultant: number;
  /** Angular deviation s = √(2 (1 − R)), degrees: 0 to 81. */
  readonly angularDeviationDeg: number;
  /** Circular standard deviation √(−2 ln R), degrees; `null` when the directions cancel out. */
  readonly circularSdDeg: number | null;
}

/** A resultant below this is rounding, not a direction. */
const LEAST_RESULTANT = 1e-12;

/**
 * Mean direction and spread of directions.
 *
 * @param directionsDeg at least one, degrees, any turn
 * @param weights one a direction, 0 or above, not all 0; all alike when left out
 * @returns summary in degrees
 *
 * Notes: errors are thrown for our own mistakes only (no direction, a weight below 0). R of grouped directions is a little
 * low: multiply by (d/2) ÷ sin(d/2), d the group's width in radians, for Zar's corrected figure. No p-value is given: directions that
 * come from one outline are not independent.
 *
 * Reference: Zar (2010), Biostatistical Analysis, ch. 26; Mardia and Jupp (2000), Directional Statistics.
 *
 * Example: 350° and 10° have mean 0° and R 0.985.
 */
export function circularSummary(
  directionsDeg: readonly number[],
  weights?: readonly number[],
): CircularSummary {
  requireAtLeast(directionsDeg.length, 1, 'directionsDeg.length');
  let [cosines, sines, total] = [0, 0, 0];
  directionsDeg.forEach((direction, index) => {
    requireFinite(direction, 'direction');
    const weight = weights === undefined ? 1 : (weights[index] ?? Number.NaN);
    requireAtLeast(weight, 0, 'weight');
    const rad = radOf(direction);
    cosines += weight * Math.cos(rad);
    sines += weight * Math.sin(rad);
    total += weight;
  });
  requireAtLeast(total, Number.MIN_VALUE, 'sum of weights');
  const resultant = Math.min(1, Math.hypot(cosines, sines) / total);
  const cancelled = resultant < LEAST_RESULTANT;
  return {
    meanDeg: cancelled ? null : wholeTurn(degOf(Math.atan2(sines, cosines))),
    resultant,
    angularDeviationDeg: degOf(Math.sqrt(2 * (1 - resultant))),
    circularSdDeg: cancelled ? null : degOf(Math.sqrt(-2 * Math.log(resultant))),
  };
}

/** The same direction from 0 up to 360°. */
export function wholeTurn(deg: number): number {
  return ((deg % 360) + 360) % 360;
}

/** How far a direction lies anticlockwise of another, from −180 up to 180°. */
export function turnBetween(fromDeg: number, toDeg: number): number {
  return wholeTurn(toDeg - fromDeg + 180) - 180;
}

/** Radians of degrees. */
export function radOf(deg: number): number {
  return (deg * Math.PI) / 180;
}

/** Degrees of radians. */
export function degOf(rad: number): number {
  return (rad * 180) / Math.PI;
}
