import { addDays, day } from '../../../core/day/day.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { PlantSeasonAnswer } from '../../../server/schemas/season.ts';
import { shortDayWords } from '../words/day-words.ts';

/** One stretch of a plant's life to look back on. */
export interface YearChoice {
  /** What is asked of the server: `?from=…&to=…`, or `''` for the season that runs. */
  readonly days: string;
  readonly words: string;
}

const FORTNIGHT = 14;
const YEAR_DAYS = 365;

/**
 * The years of a plant that can be looked at: the season that runs, that of each show it was entered for, and
 * each calendar year in which something was photographed or written down; the latest first.
 */
export function yearChoices(page: PlantPage, entries: PlantSeasonAnswer['entries']): YearChoice[] {
  const running = entries.find(({ isAim }) => isAim);
  return [
    {
      days: '',
      words: running ? `Season to ${showWords(running.show)}` : 'This year',
    },
    ...entries
      .filter((entry) => entry !== running)
      .map(({ show }) => ({
        days: daysAsked(
          addDays(day(show.day), -YEAR_DAYS + FORTNIGHT + 1),
          addDays(day(show.day), FORTNIGHT),
        ),
        words: `Season to ${showWords(show)}`,
      }))
      .reverse(),
    ...calendarYears(page).map((year) => ({
      days: daysAsked(`${year}-01-01`, `${year}-12-31`),
      words: `Calendar year ${year}`,
    })),
  ];
}

function daysAsked(from: string, to: string): string {
  return `?from=${from}&to=${to}`;
}

/** A name that tells the year is enough. */
function showWords({ name, day: on }: { name: string; day: string }): string {
  const year = on.slice(0, 4);
  return name.includes(year) ? name : `${name}, ${shortDayWords(on)} ${year}`;
}

function calendarYears({ sittings, earlier, stops, notes }: PlantPage): string[] {
  const days = [...sittings, ...earlier, ...stops, ...notes].map((one) => one.day.slice(0, 4));
  return [...new Set(days)].sort().reverse();
}
