import { type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { LogEntry, LogKind } from '../season/log-entry.ts';
import type { Bloom, BloomDate } from './bloom.ts';

/** Days of a bloom that the records keep. */
export const OFFERED_EVENTS = ['first-colour', 'full-bloom'] as const;
export type OfferedEvent = (typeof OFFERED_EVENTS)[number];

/** The log's word for each. */
export const LOG_KIND_OF: Readonly<Record<OfferedEvent, LogKind>> = {
  'first-colour': 'first-flower',
  'full-bloom': 'full-bloom',
};

/** A date that may go to the log, if the grower says yes. */
export interface BloomOffer {
  readonly event: OfferedEvent;
  readonly logKind: LogKind;
  readonly day: Day;
  readonly from90: Day;
  readonly to90: Day;
  /** The entry of an earlier yes that would be moved; `null`: a new one. */
  readonly movesNoteId: string | null;
  readonly words: string;
}

/** What the grower said of an offered date. */
export interface OfferWord {
  readonly event: OfferedEvent;
  readonly said: 'yes' | 'no';
  /** The day that was offered. */
  readonly day: Day;
  /** The entry that it became; `null` after a no. */
  readonly noteId: string | null;
}

/** A date that may be wrong by more than this either way goes to no record. */
const MOST_HALF_WIDTH_DAYS = 7;

/**
 * Dates of a bloom to be put into the log.
 *
 * @param bloom as told without what a stop lets expect (`ExpectedBloom.fullDays` null): such expectations are learned from these dates
 * @param log of the plant
 * @param from first day that an entry of this bloom may bear: that of the stop, or of what else began it
 * @param words said of earlier offers, in any order
 * @returns those that are past, sure enough, and neither written down nor answered
 *
 * Notes: what the grower wrote down goes before any curve. An answered date is offered anew only when it has moved so far that its interval no
 * longer holds the day of the answer.
 */
export function bloomOffers(
  bloom: Pick<Bloom, 'firstColour' | 'full'>,
  { log, from, words }: { log: readonly LogEntry[]; from: Day; words: readonly OfferWord[] },
): BloomOffer[] {
  return OFFERED_EVENTS.flatMap((event) => {
    const date = event === 'first-colour' ? bloom.firstColour : bloom.full;
    if (!date.isPast || daysBetween(date.from90, date.to90) > 2 * MOST_HALF_WIDTH_DAYS) return [];
    const logKind = LOG_KIND_OF[event];
    const word = words.find((one) => one.event === event && one.day >= from) ?? null;
    const own = log.filter(({ kind, day }) => kind === logKind && day >= from);
    const accepted = own.find(({ id }) => id === word?.noteId) ?? null;
    if (own.some(({ id }) => id !== word?.noteId)) return [];
    if (word !== null && holds(date, accepted?.day ?? word.day)) return [];
    return [offerOf(event, date, accepted)];
  });
}

function holds({ from90, to90 }: BloomDate, day: Day): boolean {
  return from90 <= day && day <= to90;
}

function offerOf(event: OfferedEvent, { day, from90, to90 }: BloomDate, moved: LogEntry | null): BloomOffer {
  const what = event === 'first-colour' ? 'The first colour showed' : 'Full bloom began';
  const range = from90 === to90 ? '' : ` (${dayInWords(from90)} to ${dayInWords(to90)})`;
  const ask =
    moved === null
      ? 'Put it into the log?'
      : `The log has ${dayInWords(moved.day)}, by an earlier curve. Move it?`;
  return {
    event,
    logKind: LOG_KIND_OF[event],
    day,
    from90,
    to90,
    movesNoteId: moved?.id ?? null,
    words: `${what} about ${dayInWords(day)}${range}, as the sittings tell. ${ask}`,
  };
}
