import { requireFinite } from '../errors/expect.ts';

/** A value with its 95 % repeatability, in the value's own unit. */
export interface Repeatable {
  readonly value: number;
  readonly plusMinus: number;
}

export interface Change {
  /** `none` inside the plus-minus: such a change is called "no change". */
  readonly direction: 'up' | 'down' | 'none';
  readonly by: number;
  /** 95 % repeatability of the difference. */
  readonly plusMinus: number;
}

/**
 * Whether a value changed from one sitting to the next.
 *
 * @param before earlier value, @param now later value, in one unit
 * @returns the difference and its plus-minus, the root sum of squares of both; inside it the direction is `none`
 *
 * Notes: a plus-minus is 1.96 × the standard deviation s of one reading, so the root sum of squares is the critical
 * difference at 95 %: 1.96·√2·s, the repeatability limit r, where both are alike.
 *
 * Reference: ISO 5725-6:1994, 4.1 (repeatability limit, critical difference of two measurements).
 *
 * Example: 80 ± 3 then 84 ± 4 is no change, because 4 lies inside ± 5.
 */
export function changeSince(before: Repeatable, now: Repeatable): Change {
  requireFinite(before.value, 'before.value');
  requireFinite(now.value, 'now.value');
  const by = now.value - before.value;
  const plusMinus = Math.hypot(before.plusMinus, now.plusMinus);
  const direction = Math.abs(by) <= plusMinus ? 'none' : by > 0 ? 'up' : 'down';
  return { direction, by, plusMinus };
}
