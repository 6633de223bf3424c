import type { Day } from '../day/day.ts';
import { afterStopWork } from './after-stop-work.ts';
import { earlyBloomWork } from './early-bloom-work.ts';
import { entryWork } from './entry-work.ts';
import { lookAgainWork } from './look-again-work.ts';
import { ownWork } from './own-work.ts';
import { stopWork } from './stop-work.ts';
import { weeklyWork } from './weekly-work.ts';
import type { DayRange, PlantSeason, Work } from './work.ts';

/**
 * A plant's work in a range of days, in order of day.
 *
 * @param season what it follows from: plan, stops, log, photos, turns, own notes
 * @param today weekly work is counted from what was done up to today
 * @param range work that is of use on a day in it is listed
 * @returns what is to be done, what records say was done, and what has lapsed; `workNow` tells which
 *
 * Notes: pure; the same season gives the same work with the same keys.
 *
 * Example: a deep stop written down for 20 December has work to keep it dry from the 20th to the 26th.
 */
export function workOf(season: PlantSeason, today: Day, range: DayRange): Work[] {
  return [
    ...stopWork(season),
    ...afterStopWork(season),
    ...earlyBloomWork(season),
    ...lookAgainWork(season),
    ...entryWork(season.plantId, season.show),
    ...weeklyWork(season, today, range),
    ...season.ownWork.flatMap((own) => ownWork(season, own, range.to)),
  ]
    .filter(({ day, until }) => day <= range.to && (until === null || until >= range.from))
    .sort((one, other) => (one.day === other.day ? 0 : one.day < other.day ? -1 : 1));
}
