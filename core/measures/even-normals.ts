import { probit } from 'simple-statistics';

/**
 * As many values as wanted that together are spread like a standard normal distribution: one from the middle of each of
 * `count` equally likely parts, brought to a root mean square of exactly 1.
 *
 * @param count at least 2
 * @param stride in which order they come: each `stride`-th, round and round; without a divisor in common with `count`
 *
 * Notes: a handful of random draws would be off by 1 ÷ √(2·count) from one photo to the next, these never are. Two
 * orders with strides that differ enough are all but independent: of 24, those of strides 1, 11 and 19 correlate by 0.12
 * at most.
 *
 * Reference: McKay, Beckman and Conover (1979), A comparison of three methods for selecting values of input variables
 * (Latin hypercube sampling).
 *
 * Example: `evenNormals(2, 1)` is [-1, 1].
 */
export function evenNormals(count: number, stride: number): number[] {
  const middles = Array.from({ length: count }, (_, k) => probit((((k * stride) % count) + 0.5) / count));
  const spread = Math.sqrt(middles.reduce((sum, value) => sum + value * value, 0) / count);
  return middles.map((value) => value / spread);
}
