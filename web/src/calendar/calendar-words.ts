import type { Day } from '../../../core/day/day.ts';
import { localeInUse } from '../languages/speaker.ts';
import type { MarkShape } from './season-marks.ts';
import type { WeekScale } from './week-scale.ts';

/** "Jun", or "Jan 2027" where the year is wanted. */
export function monthWords(firstDay: Day, withYear: boolean, locale?: string): string {
  const [year, month] = firstDay.split('-').map(Number) as [number, number];
  return new Intl.DateTimeFormat(locale ?? localeInUse(), {
    month: 'short',
    ...(withYear ? { year: 'numeric' } : {}),
    timeZone: 'UTC',
  }).format(new Date(Date.UTC(year, month - 1, 1)));
}

/** "Weeks 36 of 2026 to 35 of 2027". */
export function weeksInWords({ weeks }: WeekScale): string {
  const [first, last] = [weeks[0], weeks.at(-1)];
  if (first === undefined || last === undefined) return 'No weeks';
  return `Weeks ${first.week} of ${first.year} to ${last.week} of ${last.year}`;
}

export const SHAPE_WORDS: Record<MarkShape, string> = {
  'window-tip': 'tip stop planned: its days',
  'window-deep': 'deep stop planned: its days',
  'stop-tip': 'tip stop, done',
  'stop-deep': 'deep stop, done',
  bloom: 'likely in full bloom',
  show: 'show; hollow: not the one planned for',
  work: 'work',
  log: 'noted',
  'bloom-seen': 'bloom noted',
  trouble: 'pest, mould or wilt seen',
};
