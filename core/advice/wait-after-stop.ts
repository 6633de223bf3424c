import { addDays, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { AFTER_STOP } from '../season/after-stop-days.ts';
import type { Advice } from './advice.ts';
import { newestStop, type PlantHistory, type PlantStop } from './plant-history.ts';

const { breakDays: BREAK_DAYS, dryDays: DRY_DAYS, freshDays: FRESH_DAYS } = AFTER_STOP;

/** The stop that the plant has not yet had time to break from, or `null`. */
export function stopStillBreaking(history: PlantHistory): PlantStop | null {
  const stop = newestStop(history);
  return stop !== null && daysBetween(stop.day, history.today) < BREAK_DAYS ? stop : null;
}

/**
 * After a stop, let the plant break before shaping it again.
 *
 * @returns advice for four weeks after the newest stop, else `null`
 *
 * Reference: about a month until the next stop: fuchsia society newsletter, April 2001. No water for a week after a hard
 * stop: common practice, no source. Dry air: Hausbeck and Pennypacker (1991), Plant Disease 75:1168.
 */
export function waitAfterStop(history: PlantHistory): Advice | null {
  const stop = stopStillBreaking(history);
  if (stop === null) return null;
  const since = daysBetween(stop.day, history.today);
  const isDry = stop.depth === 'deep' && since < DRY_DAYS;
  return {
    kind: 'wait',
    urgency: isDry ? 2 : since < FRESH_DAYS ? 1 : 0,
    what: isDry ? 'Do not water yet, and let it break.' : 'Let it break before cutting again.',
    where: null,
    howMuch: isDry
      ? `No water until about ${dayInWords(addDays(stop.day, DRY_DAYS))} (4–5 days at the least), but never let the roots turn dust-dry. No cutting until about ${dayInWords(addDays(stop.day, BREAK_DAYS))}.`
      : `No cutting until about ${dayInWords(addDays(stop.day, BREAK_DAYS))}.`,
    why: whyWait(stop, since, isDry),
    sureness: 'likely',
    caution:
      since < FRESH_DAYS
        ? 'Fresh cuts rot easily: keep the air dry and moving for at least a day, and leave no stubs.'
        : null,
  };
}

function whyWait(stop: PlantStop, since: number, isDry: boolean): string {
  const when = since === 0 ? 'today' : since === 1 ? 'yesterday' : `${since} days ago`;
  const dry = isDry
    ? ' A plant without leaves to speak of drinks little (common practice, no source; some growers water well instead).'
    : '';
  return `The ${stop.depth} stop was ${when}; side shoots need about a month until they can be stopped again.${dry}`;
}
