import { addDays, type Day, day, daysBetween } from '../day/day.ts';

/** A week of the calendar, Monday to Sunday. */
export interface CalendarWeek {
  /** The year that the week's Thursday lies in, which is not always that of the day. */
  readonly year: number;
  /** 1 to 53. */
  readonly week: number;
  readonly monday: Day;
}

const A_MONDAY = day('2001-01-01');

/**
 * The week that a day lies in.
 *
 * Reference: ISO 8601-1:2019, 3.1.1.23 (calendar week number): week 1 is the one with the year's first Thursday.
 *
 * Example: 1 January 2021 lies in week 53 of 2020.
 */
export function calendarWeek(of: Day): CalendarWeek {
  const sinceMonday = ((daysBetween(A_MONDAY, of) % 7) + 7) % 7;
  const monday = addDays(of, -sinceMonday);
  const thursday = addDays(monday, 3);
  const year = Number(thursday.slice(0, 4));
  const week = 1 + Math.floor(daysBetween(day(`${thursday.slice(0, 4)}-01-01`), thursday) / 7);
  return { year, week, monday };
}

/** The weeks from one day to another, both counted, for a page with weeks across. */
export function calendarWeeks(from: Day, to: Day): CalendarWeek[] {
  const weeks: CalendarWeek[] = [];
  for (let week = calendarWeek(from); week.monday <= to; week = calendarWeek(addDays(week.monday, 7))) {
    weeks.push(week);
  }
  return weeks;
}
