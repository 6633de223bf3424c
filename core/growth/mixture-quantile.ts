import { requireAtLeast } from '../errors/expect.ts';
import { studentBelow } from './student-t.ts';

/** One part of a mixture: a Student t about `at`, or `at` itself where the scale is 0. */
export interface MixturePart {
  readonly weight: number;
  readonly at: number;
  readonly scale: number;
}

/** Beyond so many scales the table ends; what lies there is taken as nothing or all. */
const REACH = 40;
const STEPS_A_SCALE = 16;
const HALVINGS = 50;

/**
 * Values that a mixture of Student t distributions stays below with given chances.
 *
 * @param parts weights above 0, all together 1
 * @param freedom degrees of freedom, the same for all parts
 * @param chances each above 0 and below 1
 * @returns one value a chance, in the parts' unit
 *
 * How: halves the bracket of the mixture's own distribution; Student's is read off a table with a step of 1/16 scale (good to 1e-4).
 */
export function mixtureQuantiles(
  parts: readonly MixturePart[],
  freedom: number,
  chances: readonly number[],
): number[] {
  requireAtLeast(parts.length, 1, 'parts');
  const table = Float64Array.from({ length: 2 * REACH * STEPS_A_SCALE + 1 }, (_, k) =>
    studentBelow(k / STEPS_A_SCALE - REACH, freedom),
  );
  const below = (value: number) =>
    parts.reduce((sum, { weight, at, scale }) => sum + weight * partBelow(table, value - at, scale), 0);
  const lowest = Math.min(...parts.map(({ at, scale }) => at - REACH * scale));
  const highest = Math.max(...parts.map(({ at, scale }) => at + REACH * scale));
  return chances.map((chance) => {
    let [low, high] = [lowest, highest];
    for (let k = 0; k < HALVINGS && high - low > 1e-6 * Math.abs(high); k++) {
      const middle = (low + high) / 2;
      if (below(middle) < chance) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  });
}

function partBelow(table: Float64Array, beyond: number, scale: number): number {
  if (scale === 0) return beyond >= 0 ? 1 : 0;
  const place = (beyond / scale + REACH) * STEPS_A_SCALE;
  if (place <= 0) return 0;
  if (place >= table.length - 1) return 1;
  const index = Math.floor(place);
  const [left, right] = [table[index] as number, table[index + 1] as number];
  return left + (place - index) * (right - left);
}
