import { expectation, requireFinite } from '../errors/expect.ts';

const SQRT_TWO_PI = Math.sqrt(2 * Math.PI);
/** Below this the series is quick, above it the fraction is. */
const SERIES_UP_TO = 3;
const FRACTION_DEPTH = 80;

/**
 * Chance that a standard normal variable is above `z`.
 *
 * @param z standard deviations
 * @returns 0–1, good to about 1e-15 of 1 below z = 3 and to ten digits of itself above
 *
 * Reference: Abramowitz and Stegun (1964), Handbook of Mathematical Functions, 26.2.11 (series) and 26.2.14
 * (continued fraction).
 *
 * Example: 1.959963985 gives 0.025.
 */
export function normalTail(z: number): number {
  requireFinite(z, 'z');
  if (z < 0) return 1 - normalTail(-z);
  const density = Math.exp((-z * z) / 2) / SQRT_TWO_PI;
  if (z < SERIES_UP_TO) {
    let [term, sum] = [z, z];
    for (let n = 1; term > 1e-17 * sum; n++) {
      term *= (z * z) / (2 * n + 1);
      sum += term;
    }
    return 0.5 - density * sum;
  }
  let fraction = z;
  for (let n = FRACTION_DEPTH; n >= 1; n--) fraction = z + n / fraction;
  return density / fraction;
}

/** The widest tail end that is looked at: its chance is below the smallest number there is. */
const FARTHEST = 39;

/**
 * The z that a standard normal variable exceeds with the given chance: the other way round of `normalTail`.
 *
 * @param chance above 0 and at most 0.5
 *
 * Notes: by halving, because the library's quantile is off in the third digit (1.957 for 1.960).
 *
 * Example: 0.025 gives 1.959963985.
 */
export function normalPoint(chance: number): number {
  if (!(chance > 0 && chance <= 0.5)) {
    throw new RangeError(expectation('a chance above 0 and at most 0.5', 'chance', chance));
  }
  let [low, high] = [0, FARTHEST];
  for (let middle = (low + high) / 2; middle > low && middle < high; middle = (low + high) / 2) {
    if (normalTail(middle) > chance) low = middle;
    else high = middle;
  }
  return high;
}
