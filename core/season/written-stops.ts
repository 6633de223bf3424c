import type { StopDepth } from '../cut/cut.ts';
import { addDays, type Day } from '../day/day.ts';

/** A stop as the grower wrote it down. */
export interface WrittenStop {
  readonly day: Day;
  readonly depth: StopDepth;
}

/** First and last day, both counted. */
export interface DayWindow {
  readonly from: Day;
  readonly to: Day;
}

/** A stop this many days before a window opens still counts as the one planned. */
const EARLY_DAYS = 14;
/** The first stop of a season may have been done this many days before; what lies farther back is another season's. */
const FIRST_EARLY_DAYS = 60;

/**
 * Which stop written down is meant for which step: each for the latest step whose window it does not precede by more than a fortnight.
 *
 * @param windows of the steps, earliest first
 * @param stops in any order; those after the show are left out
 * @returns one a step, `null` where none is written; of several for one step the newest, which is what the plant grew from
 */
export function matchedStops(
  windows: readonly DayWindow[],
  stops: readonly WrittenStop[],
  showDay: Day,
): (WrittenStop | null)[] {
  const matched: (WrittenStop | null)[] = windows.map(() => null);
  for (const stop of stops) {
    if (stop.day > showDay) continue;
    const step = windows.findLastIndex(
      ({ from }, index) => stop.day >= addDays(from, -(index === 0 ? FIRST_EARLY_DAYS : EARLY_DAYS)),
    );
    const before = matched[step];
    if (step >= 0 && (!before || stop.day > before.day)) matched[step] = stop;
  }
  return matched;
}
