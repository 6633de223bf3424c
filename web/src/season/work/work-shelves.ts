import { addDays, type Day } from '../../../../core/day/day.ts';
import type { Piece } from '../../api/work-words.ts';

/** A plant's work, parted by when it is wanted. */
export interface WorkShelves {
  /** Its day has come and its use has not ended. */
  readonly now: readonly Piece[];
  /** Of the next two weeks; of work that comes round only the next round. */
  readonly soon: readonly Piece[];
  readonly later: readonly Piece[];
  /** Done, skipped and lapsed, the newest first. */
  readonly settled: readonly Piece[];
}

const SOON_DAYS = 14;

/** Parts the work of one plant. What has lapsed stands among the settled: there is nothing to make up. */
export function workShelves(work: readonly Piece[], today: Day): WorkShelves {
  const now = work.filter(({ state }) => state === 'due' || state === 'overdue');
  const toCome = nextRounds(work.filter(({ state }) => state === 'to-come'));
  const soonEnds = addDays(today, SOON_DAYS);
  return {
    now,
    soon: toCome.filter(({ day }) => day <= soonEnds),
    later: toCome.filter(({ day }) => day > soonEnds),
    settled: work
      .filter(({ state }) => state === 'done' || state === 'skipped' || state === 'lapsed')
      .toReversed(),
  };
}

/** Of the same work again and again the first; the rest follows from it. */
function nextRounds(work: readonly Piece[]): Piece[] {
  const seen = new Set<string>();
  return work.filter(({ kind, what }) => {
    const same = `${kind} ${what}`;
    if (seen.has(same)) return false;
    seen.add(same);
    return true;
  });
}
