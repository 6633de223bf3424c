import { expectation, requireFinite, requirePositiveInteger } from '../errors/expect.ts';

/**
 * Chance that a variable of Student's t distribution is below `t`.
 *
 * @param t any number
 * @param freedom degrees of freedom, a whole number of at least 1
 * @returns 0–1
 *
 * Reference: Abramowitz and Stegun (1964), Handbook of Mathematical Functions, 26.7.3 and 26.7.4 (finite sums).
 *
 * Example: 2.228 at 10 degrees of freedom gives 0.975.
 */
export function studentBelow(t: number, freedom: number): number {
  requireFinite(t, 't');
  requirePositiveInteger(freedom, 'freedom');
  const angle = Math.atan(t / Math.sqrt(freedom));
  const [sin, square] = [Math.sin(angle), Math.cos(angle) ** 2];
  const isOdd = freedom % 2 === 1;
  // Within ± t: an odd number of degrees starts from the angle itself, an even one from its sine.
  let [term, sum] = isOdd ? [sin * Math.cos(angle), 0] : [sin, sin];
  for (let k = isOdd ? 1 : 2; k < freedom; k += 2) {
    if (isOdd) {
      sum += term;
      term *= ((k + 1) / (k + 2)) * square;
    } else {
      term *= ((k - 1) / k) * square;
      sum += term;
    }
  }
  const within = isOdd ? (2 / Math.PI) * (angle + sum) : sum;
  return (1 + within) / 2;
}

/**
 * The t that a variable of Student's t distribution stays below with the given chance: the other way round of `studentBelow`.
 *
 * @param chance above 0 and below 1
 * @param freedom degrees of freedom, a whole number of at least 1
 *
 * How: by halving, to the last digit.
 *
 * Example: 0.9 at 9 degrees of freedom gives 1.383.
 */
export function studentPoint(chance: number, freedom: number): number {
  if (!(chance > 0 && chance < 1)) {
    throw new RangeError(expectation('a chance above 0 and below 1', 'chance', chance));
  }
  let reach = 1;
  while (studentBelow(reach, freedom) < Math.max(chance, 1 - chance)) reach *= 2;
  let [low, high] = [-reach, reach];
  for (let middle = 0; middle > low && middle < high; middle = (low + high) / 2) {
    if (studentBelow(middle, freedom) < chance) low = middle;
    else high = middle;
  }
  return high;
}
