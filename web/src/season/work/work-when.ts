import type { Day } from '../../../../core/day/day.ts';
import type { Piece } from '../../api/work-words.ts';
import { agoWords, dayWords } from '../../words/day-words.ts';

/** "today", "until Wed 2 Dec", "in 3 days, Sun 29 Nov": when a piece of work is wanted, without hurry. */
export function whenWords({ day, dueBy, until, state }: Piece, today: Day): string {
  if (state === 'to-come') return `${agoWords(day, today)}, ${dayWords(day, today)}`;
  const last = until ?? dueBy;
  const since = day < today ? `since ${dayWords(day, today)}` : 'from today';
  if (until === null) return since;
  return last === today ? `${since}, today is the last day` : `${since}, until ${dayWords(last, today)}`;
}
