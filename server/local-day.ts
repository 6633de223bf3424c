import { type Day, day } from '../core/day/day.ts';

/** The calendar day that a moment has on this machine's clock and in its zone. */
export function localDay(moment: Date): Day {
  const [month, date] = [moment.getMonth() + 1, moment.getDate()].map((part) =>
    String(part).padStart(2, '0'),
  );
  return day(`${moment.getFullYear()}-${month}-${date}`);
}
