import { addDays, type Day, daysBetween } from '../../../core/day/day.ts';
import { type CalendarWeek, calendarWeek, calendarWeeks } from '../../../core/season/calendar-week.ts';

/** Whole weeks across a page, Monday to Sunday. */
export interface WeekScale {
  readonly weeks: readonly CalendarWeek[];
  readonly firstDay: Day;
  readonly lastDay: Day;
}

/** Where something stands across the page, percent of its width. */
export interface Stretch {
  readonly leftPercent: number;
  readonly widthPercent: number;
}

/** The weeks that hold two days, from the first one's Monday to the last one's Sunday. */
export function weekScale(from: Day, to: Day): WeekScale {
  return {
    weeks: calendarWeeks(from, to),
    firstDay: calendarWeek(from).monday,
    lastDay: addDays(calendarWeek(to).monday, 6),
  };
}

/** The part of `from` to `to`, both counted, that lies on the page; `null` when none does. */
export function stretchOf({ firstDay, lastDay }: WeekScale, from: Day, to: Day): Stretch | null {
  if (to < firstDay || from > lastDay) return null;
  const start = from < firstDay ? firstDay : from;
  const end = to > lastDay ? lastDay : to;
  const all = daysBetween(firstDay, lastDay) + 1;
  return {
    leftPercent: (100 * daysBetween(firstDay, start)) / all,
    widthPercent: (100 * (daysBetween(start, end) + 1)) / all,
  };
}

/** The months on the page, each as far as it is on it. */
export function monthsOf(scale: WeekScale): (Stretch & { readonly firstDay: Day })[] {
  const months: (Stretch & { readonly firstDay: Day })[] = [];
  let firstDay = `${scale.firstDay.slice(0, 7)}-01` as Day;
  while (firstDay <= scale.lastDay) {
    const next = `${addDays(firstDay, 31).slice(0, 7)}-01` as Day;
    const stretch = stretchOf(scale, firstDay, addDays(next, -1));
    if (stretch !== null) months.push({ ...stretch, firstDay });
    firstDay = next;
  }
  return months;
}

/** Puts labels of one length on lanes so that none covers another; `starts` rise. */
export function laneOf(starts: readonly number[], length: number): number[] {
  const ends: number[] = [];
  return starts.map((start) => {
    const free = ends.findIndex((end) => end <= start);
    const lane = free === -1 ? ends.length : free;
    ends[lane] = start + length;
    return lane;
  });
}
