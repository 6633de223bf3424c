import { quickselect } from 'simple-statistics';

/**
 * The value that would stand at `rank` were the values in order of size, 0 the smallest; they are put in another order.
 *
 * Reference: Floyd, Rivest (1975), Expected time bounds for selection.
 *
 * Example: of 3, 1, 2 the value of rank 1 is 2.
 */
export function valueOfRank(values: Float32Array | Float64Array, rank: number): number | undefined {
  if (rank < 0 || rank >= values.length) return undefined;
  // The library asks for an array but only reads and writes by index.
  quickselect(values as unknown as number[], rank);
  return values[rank];
}
