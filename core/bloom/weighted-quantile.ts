import { requireAtLeast } from '../errors/expect.ts';

/** A value with its share of belief. */
export interface WeightedValue {
  readonly value: number;
  readonly weight: number;
}

/**
 * Values below which the given shares of the weight lie.
 *
 * @param values at least one, weights above 0, in any order
 * @param chances each above 0 and below 1
 * @returns one value a chance, in the values' unit
 *
 * Example: values 1, 2, 3 of equal weight have the median 2.
 */
export function weightedQuantiles(values: readonly WeightedValue[], chances: readonly number[]): number[] {
  requireAtLeast(values.length, 1, 'values');
  const ordered = [...values].sort((one, other) => one.value - other.value);
  const all = ordered.reduce((sum, { weight }) => sum + weight, 0);
  return chances.map((chance) => {
    let below = 0;
    for (const { value, weight } of ordered) {
      below += weight;
      if (below >= chance * all) return value;
    }
    return (ordered.at(-1) as WeightedValue).value;
  });
}
