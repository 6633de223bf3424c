import type { Day } from './day.ts';

/** Months as core writes them, January first. */
export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** A day as a grower would say it: `2026-03-08` is "8 March 2026". */
export function dayInWords(day: Day): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  return `${date} ${MONTHS[month - 1]} ${year}`;
}
