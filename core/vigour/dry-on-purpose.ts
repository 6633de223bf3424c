import type { StopDepth } from '../cut/cut.ts';
import { addDays, type Day } from '../day/day.ts';
import { AFTER_STOP } from '../season/after-stop-days.ts';

/**
 * Until when a plant is kept dry on purpose on a day, as its stops tell: from a few days before a deep stop until about a week after it.
 *
 * @param stops written down, in any order
 * @returns the last day; `null` when the day lies near no deep stop
 *
 * Reference: the pot dry before a hard cut, and no water for about a week after it, 4–5 days at the least: common practice, no source.
 */
export function dryUntil(
  day: Day,
  stops: readonly { readonly day: Day; readonly depth: StopDepth }[],
): Day | null {
  const near = stops.find(
    (stop) =>
      stop.depth === 'deep' &&
      day >= addDays(stop.day, -AFTER_STOP.leastDryDays) &&
      day <= addDays(stop.day, AFTER_STOP.dryDays),
  );
  return near === undefined ? null : addDays(near.day, AFTER_STOP.dryDays);
}
