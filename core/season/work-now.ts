import { addDays, type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { Work } from './work.ts';

/** What the grower said of a piece of work; the newest word on a key holds. */
export type WorkWord =
  | { readonly key: string; readonly said: 'done'; readonly day: Day }
  | { readonly key: string; readonly said: 'moved'; readonly day: Day }
  | { readonly key: string; readonly said: 'skipped'; readonly day: Day; readonly reason: string };

export const WORK_STATES = ['to-come', 'due', 'overdue', 'done', 'skipped', 'lapsed'] as const;
export type WorkState = (typeof WORK_STATES)[number];

/** Work as it stands today. */
export interface WorkNow extends Work {
  readonly state: WorkState;
  /** The day it was moved from; `null` when it was not. */
  readonly movedFrom: Day | null;
  /** How it comes to that state, in words; `null` where the days say all. */
  readonly stateInWords: string | null;
}

/**
 * How a plant's work stands, with the grower's words laid over it.
 *
 * @param words in the order given; of several on one key the last holds
 *
 * Notes: nothing nags. Work past its use lapses by itself and says so. Work that is moved keeps its length; its use reaches to the new day
 * at the least.
 */
export function workNow(work: readonly Work[], words: readonly WorkWord[], today: Day): WorkNow[] {
  const byKey = new Map(words.map((word) => [word.key, word]));
  return work.map((one) => standing(one, byKey.get(one.key) ?? null, today));
}

function standing(work: Work, word: WorkWord | null, today: Day): WorkNow {
  const movedFrom = word?.said === 'moved' && word.day !== work.day ? work.day : null;
  const placed = movedFrom === null ? work : movedTo(work, (word as WorkWord).day);
  return { ...placed, movedFrom, ...stateOf(placed, word, today) };
}

function stateOf(
  { day, dueBy, until, doneOn }: Work,
  word: WorkWord | null,
  today: Day,
): Pick<WorkNow, 'state' | 'stateInWords'> {
  if (word?.said === 'done') return { state: 'done', stateInWords: `Done on ${dayInWords(word.day)}.` };
  if (doneOn !== null) {
    return { state: 'done', stateInWords: `Done on ${dayInWords(doneOn)}, as your records say.` };
  }
  if (word?.said === 'skipped') {
    return { state: 'skipped', stateInWords: `Skipped: ${word.reason}` };
  }
  if (today < day) return { state: 'to-come', stateInWords: null };
  if (today <= dueBy) return { state: 'due', stateInWords: null };
  if (until === null || today <= until) {
    return { state: 'overdue', stateInWords: `It was due by ${dayInWords(dueBy)}.` };
  }
  return {
    state: 'lapsed',
    stateInWords: `Its time ended on ${dayInWords(until)}. There is nothing to make up.`,
  };
}

function movedTo(work: Work, day: Day): Work {
  const dueBy = addDays(work.dueBy, daysBetween(work.day, day));
  const isLonger = work.until === null || daysBetween(work.until, dueBy) <= 0;
  return { ...work, day, dueBy, until: isLonger ? work.until : dueBy };
}
