import { MONTHS } from '../../../core/day/day-in-words.ts';

const WRITTEN_DAY = new RegExp(`^(\\d{1,2}) (${MONTHS.join('|')})(?: (\\d{4}))?$`);

/**
 * A day as core writes it, "8 March 2026", in the manner of a locale; any other text as it was.
 *
 * @param locale BCP 47
 */
export function dayInLocale(text: string, locale: string): string {
  const match = WRITTEN_DAY.exec(text);
  if (match === null) return text;
  const [, date, month, year] = match;
  const day = new Date(
    Date.UTC(Number(year ?? 2000), MONTHS.indexOf(month as (typeof MONTHS)[number]), Number(date)),
  );
  return new Intl.DateTimeFormat(locale, {
    day: 'numeric',
    month: 'long',
    ...(year === undefined ? {} : { year: 'numeric' }),
    timeZone: 'UTC',
  }).format(day);
}
