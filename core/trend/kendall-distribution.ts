import { requirePositiveInteger } from '../errors/expect.ts';

/**
 * Chance that Kendall's S is at least `s` when the order of the values is chance alone.
 *
 * S counts, over all pairs of values, those that rise less those that fall; equal values count nothing.
 *
 * @param s the S found, a whole number
 * @param groups how many values are equal to one another, one number a group; all 1 without ties
 * @returns 0–1, exact to rounding
 *
 * How: the number of falling pairs among all orders of values with ties has the Gaussian multinomial coefficient as its
 * generating function; it is built up group by group, a product of polynomials and nothing to be drawn or listed.
 *
 * Notes: meant for few values; the counts are held as shares, so nothing overflows.
 *
 * Reference: Kendall (1975), Rank Correlation Methods, 4th ed., ch. 5; without ties the recursion of its table 1 (in
 * Gilbert, 1987, table A18).
 *
 * Example: four values that all rise (S = 6) come about by chance once in 24.
 */
export function chanceOfAtLeast(s: number, groups: readonly number[]): number {
  const falls = shareOfFalls(groups);
  const pairs = falls.length - 1;
  // S = pairs that can differ − 2 × falling pairs.
  let chance = 0;
  for (let falling = 0; falling <= pairs && pairs - 2 * falling >= s; falling++) {
    chance += falls[falling] as number;
  }
  return Math.min(1, chance);
}

/**
 * The largest |S| that chance exceeds more rarely than `share`.
 *
 * @param share two-sided, above 0 and below 1
 * @param count of values without ties
 * @returns S, or `null` when even the largest S there is comes about more often than that
 *
 * Example: for five values at 0.05 it is 8, because only ± 10 is rarer than one in twenty.
 */
export function largestUsualS(share: number, count: number): number | null {
  requirePositiveInteger(count, 'count');
  const groups = new Array<number>(count).fill(1);
  const pairs = (count * (count - 1)) / 2;
  if (2 * chanceOfAtLeast(pairs, groups) > share) return null;
  let usual = pairs - 2;
  while (usual > 0 && 2 * chanceOfAtLeast(usual, groups) <= share) usual -= 2;
  return usual;
}

/** Share of all orders that have 0, 1, 2 … falling pairs. */
function shareOfFalls(groups: readonly number[]): Float64Array {
  let shares: Float64Array = Float64Array.of(1);
  let placed = 0;
  for (const group of groups) {
    requirePositiveInteger(group, 'group');
    // The group's values fall in among those placed already: the Gaussian binomial, factor by factor.
    for (let k = 1; k <= group; k++) shares = divided(timesSteps(shares, placed + k), k);
    placed += group;
  }
  return shares;
}

/** Times (1 + q + … + q^(steps − 1)) ÷ steps. */
function timesSteps(shares: Float64Array, steps: number): Float64Array {
  const product = new Float64Array(shares.length + steps - 1);
  shares.forEach((share, index) => {
    for (let step = 0; step < steps; step++)
      product[index + step] = (product[index + step] as number) + share / steps;
  });
  return product;
}

/** The other way round: divides by (1 + q + … + q^(steps − 1)) ÷ steps, which goes without a rest. */
function divided(shares: Float64Array, steps: number): Float64Array {
  const quotient = new Float64Array(shares.length - steps + 1);
  for (let index = 0; index < quotient.length; index++) {
    let rest = (shares[index] as number) * steps;
    for (let step = 1; step < steps && step <= index; step++) rest -= quotient[index - step] as number;
    quotient[index] = rest;
  }
  return quotient;
}
