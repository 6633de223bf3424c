import { expectation } from '../errors/expect.ts';

/** A calendar day `YYYY-MM-DD`, counted by date and never by hours, so it means the same in every time zone. */
export type Day = string & { readonly __brand: 'Day' };

/** Whether `text` is a day of the (proleptic) Gregorian calendar, written `YYYY-MM-DD`. */
export function isDay(text: string): text is Day {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!parts) return false;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
}

/** Reads a day. Throws a `RangeError` when `text` is not one. */
export function day(text: string): Day {
  if (!isDay(text)) throw new RangeError(expectation('a day YYYY-MM-DD', 'day', text));
  return text;
}

/** Whole days from `from` to `to`; negative when `to` comes first. */
export function daysBetween(from: Day, to: Day): number {
  return dayNumber(to) - dayNumber(from);
}

/** The day `days` after (before, if negative) the given one. */
export function addDays(start: Day, days: number): Day {
  if (!Number.isInteger(days)) throw new RangeError(expectation('a whole number', 'days', days));
  return dayFromNumber(dayNumber(start) + days);
}

function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeapYear(year) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

/** Days since 1970-01-01 by the civil calendar (UTC is used as plain arithmetic, no zone enters). */
function dayNumber(value: Day): number {
  // The language reads a bare date as midnight UTC, in one step of the thousands that a plant's past asks for.
  return Math.round(Date.parse(value) / 86_400_000);
}

function dayFromNumber(number: number): Day {
  return day(new Date(number * 86_400_000).toISOString().slice(0, 10));
}
