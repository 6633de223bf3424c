import { addDays, type Day, daysBetween } from '../../../core/day/day.ts';

/** One mark of the weeks axis. */
export interface WeekTick {
  readonly day: Day;
  /** Weeks before the show (negative after it), or weeks since the first sitting. */
  readonly week: number;
}

/**
 * Marks whole weeks between two days, at most `most` of them: counted back from the show when there is one,
 * else on from the first day.
 */
export function weekTicks(first: Day, last: Day, showDay: Day | null, most: number): WeekTick[] {
  const weeks = Math.max(daysBetween(first, last) / 7, 1);
  const stride = STRIDES.find((one) => weeks / one <= most) ?? Math.ceil(weeks / most);
  const anchor = showDay ?? first;
  const ticks: WeekTick[] = [];
  const start = Math.ceil(daysBetween(anchor, first) / 7 / stride);
  for (let at = start; ; at++) {
    const day = addDays(anchor, at * stride * 7);
    if (daysBetween(day, last) < 0) return ticks;
    ticks.push({ day, week: showDay ? -at * stride || 0 : at * stride });
  }
}

const STRIDES = [1, 2, 4, 8, 13, 26, 52];
