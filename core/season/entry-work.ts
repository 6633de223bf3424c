import { addDays } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { Show } from './show.ts';
import { type Work, workKey } from './work.ts';

/** Read the schedule and measure so many days before the show, and by a week before it at the latest: our own choice. */
const CHECK_DAYS = { from: 21, to: 7 } as const;

/** Schedule, pot and size held against the class in good time. */
export function entryWork(plantId: string, show: Show | null): Work[] {
  if (show === null) return [];
  return [
    {
      key: workKey(plantId, 'check-entry', show.id),
      plantId,
      kind: 'check-entry',
      day: addDays(show.day, -CHECK_DAYS.from),
      dueBy: addDays(show.day, -CHECK_DAYS.to),
      until: addDays(show.day, -1),
      what: `Read the schedule of ${show.name} again; measure pot and plant against the class.`,
      why: `The show is on ${dayInWords(show.day)}.`,
      standing: 'Three weeks before: our own choice. The schedule decides.',
      caution: null,
      doneOn: null,
    },
  ];
}
