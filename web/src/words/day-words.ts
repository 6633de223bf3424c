import { type Day, day, daysBetween } from '../../../core/day/day.ts';
import { localeInUse } from '../languages/speaker.ts';

/** Today on the grower's own calendar, by the clock of the device. */
export function todayHere(now: Date = new Date()): Day {
  const pad = (value: number) => String(value).padStart(2, '0');
  return day(`${now.getFullYear()}-${pad(now.getMonth() + 1)}-${pad(now.getDate())}`);
}

/** "Sun 22 Nov", with the year when it is not this year; in the manner of the reader's locale. */
export function dayWords(value: string, today: Day, locale?: string): string {
  const sameYear = value.slice(0, 4) === today.slice(0, 4);
  return written(value, locale, {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    ...(sameYear ? {} : { year: 'numeric' }),
  });
}

/** "22 Nov": for film strips and axes, where the row says the rest. */
export function shortDayWords(value: string, locale?: string): string {
  return written(value, locale, { day: 'numeric', month: 'short' });
}

/** "today", "yesterday", "5 days ago", "3 weeks ago"; a day ahead reads "in 5 days". */
export function agoWords(value: string, today: Day): string {
  const days = daysBetween(day(value), today);
  if (days === 0) return 'today';
  if (days === 1) return 'yesterday';
  if (days === -1) return 'tomorrow';
  const size = Math.abs(days);
  const words = size < 14 ? `${size} days` : `${Math.round(size / 7)} weeks`;
  return days > 0 ? `${words} ago` : `in ${words}`;
}

/** "28 weeks to the show", "6 days to the show", "show day", "show was 2 weeks ago". */
export function showWords(showDay: string, today: Day): string {
  const days = daysBetween(today, day(showDay));
  if (days === 0) return 'show day is today';
  if (days < 0) return `show was ${agoWords(showDay, today)}`;
  if (days === 1) return '1 day to the show';
  return days < 14 ? `${days} days to the show` : `${Math.floor(days / 7)} weeks to the show`;
}

/** The day is set as UTC and written as UTC, so that no zone can move it. */
function written(value: string, locale: string | undefined, style: Intl.DateTimeFormatOptions): string {
  const [year, month, date] = value.split('-').map(Number) as [number, number, number];
  return new Intl.DateTimeFormat(locale ?? localeInUse(), { ...style, timeZone: 'UTC' }).format(
    new Date(Date.UTC(year, month - 1, date)),
  );
}
