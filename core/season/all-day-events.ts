import { addDays, type Day } from '../day/day.ts';
import type { Entry, Show } from './show.ts';
import { WEEKLY_WORK, type WorkKind } from './work.ts';
import type { WorkNow } from './work-now.ts';

/** An event that lasts whole days, as calendar programs take it: no hour and no time zone. */
export interface AllDayEvent {
  /** The same for the same thing, though its days move. */
  readonly uid: string;
  readonly day: Day;
  /** The day after the last one. */
  readonly endExclusive: Day;
  readonly summary: string;
  readonly description: string;
  readonly place: string | null;
  /** Days before the first day; `null`: no reminder. */
  readonly reminderDaysBefore: number | null;
}

export interface CalendarQuestion {
  readonly shows: readonly Show[];
  readonly entries: readonly Entry[];
  /** Of all plants. */
  readonly work: readonly WorkNow[];
  /** By plant id. */
  readonly plantNames: ReadonlyMap<string, string>;
  /** Weekly work fills a calendar: off unless wanted. */
  readonly withWeekly: boolean;
}

/** Reminders, days before: our own choice. */
const REMINDERS: Readonly<Partial<Record<WorkKind, number>>> = { stop: 3, 'check-entry': 0, 'pot-on': 0 };
const SHOW_REMINDER_DAYS = 7;

/** The stop is an event as long as its window; other work is one on its day, spans of care as long as they last. */
const SPANS: readonly WorkKind[] = ['stop', 'keep-dry', 'keep-airy', 'look-for-breaks', 'take-off-bloom'];

/**
 * Shows and the work that is still to be done, as all-day events in order of day.
 *
 * Notes: what is done, skipped or lapsed is left out. An event's end is the day after its last, as in RFC 5545 (DTEND of a DATE value is
 * exclusive).
 *
 * Reference: RFC 5545, Internet Calendaring and Scheduling Core Object Specification, 3.6.1.
 *
 * Example: a window from 30 January to 5 February is an event from 30 January to 6 February.
 */
export function allDayEvents(question: CalendarQuestion): AllDayEvent[] {
  const { shows, work, withWeekly } = question;
  const wanted = work.filter(
    ({ kind, state }) =>
      (state === 'to-come' || state === 'due' || state === 'overdue') &&
      (withWeekly || !WEEKLY_WORK.includes(kind)),
  );
  return [
    ...shows.map((show) => showEvent(show, question)),
    ...wanted.map((one) => workEvent(one, question)),
  ].sort((one, other) => (one.day === other.day ? 0 : one.day < other.day ? -1 : 1));
}

function showEvent(show: Show, { entries, plantNames }: CalendarQuestion): AllDayEvent {
  const names = entries
    .filter(({ showId }) => showId === show.id)
    .flatMap(({ plantId }) => plantNames.get(plantId) ?? [])
    .sort();
  return {
    uid: `show:${show.id}`,
    day: show.day,
    endExclusive: addDays(show.day, 1),
    summary: show.name,
    description: [names.length > 0 ? `Entered: ${names.join(', ')}.` : 'No plant is entered yet.', show.rules]
      .filter((line) => line !== '')
      .join('\n'),
    place: show.place === '' ? null : show.place,
    reminderDaysBefore: SHOW_REMINDER_DAYS,
  };
}

function workEvent(work: WorkNow, { plantNames }: CalendarQuestion): AllDayEvent {
  const { key, kind, day, dueBy, plantId, what, why, standing, caution } = work;
  const name = plantNames.get(plantId);
  return {
    uid: key,
    day,
    endExclusive: addDays(SPANS.includes(kind) && dueBy > day ? dueBy : day, 1),
    summary: name === undefined ? what : `${name}: ${what}`,
    description: [why, standing, ...(caution === null ? [] : [caution])].join('\n'),
    place: null,
    reminderDaysBefore: REMINDERS[kind] ?? null,
  };
}
