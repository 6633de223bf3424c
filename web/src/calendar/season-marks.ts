import { addDays, type Day, day } from '../../../core/day/day.ts';
import { LOG_WORDS, type LogKind } from '../../../core/season/log-entry.ts';
import type { Show } from '../../../core/season/show.ts';
import type { Calendar } from '../../../server/schemas/season.ts';
import { ownWords } from '../languages/own-words.ts';
import { dayWords } from '../words/day-words.ts';
import { STOP_WORDS } from '../words/plant-words.ts';

type CalendarPlant = Calendar['plants'][number];

/** What a row of the calendar is drawn from. */
export interface DrawnSeason
  extends Pick<CalendarPlant, 'steps' | 'bloom90' | 'bloomLastsDays' | 'stops' | 'notes' | 'work'> {
  readonly shows: readonly Show[];
  readonly aimShowId: string | null;
}

export const MARK_SHAPES = [
  'bloom',
  'window-tip',
  'window-deep',
  'stop-tip',
  'stop-deep',
  'show',
  'work',
  'trouble',
  'bloom-seen',
  'log',
] as const;
export type MarkShape = (typeof MARK_SHAPES)[number];

/** One thing drawn on a row, and what it says. */
export interface SeasonMark {
  readonly key: string;
  readonly shape: MarkShape;
  /** First and last day, both counted. */
  readonly from: Day;
  readonly to: Day;
  /** Past or settled things are drawn lighter. */
  readonly isFaint: boolean;
  readonly words: string;
}

/** All that happens in a plant's season, as marks; those on top come last. */
export function seasonMarks(season: DrawnSeason, today: Day): SeasonMark[] {
  const say = (on: string) => dayWords(on, today);
  return [
    ...bloomMark(season, say),
    ...season.steps.map(({ role, depth, window, usual, state, words }) => ({
      key: `window ${role}`,
      shape: depth === 'tip' ? ('window-tip' as const) : ('window-deep' as const),
      from: day(window.from),
      to: day(window.to),
      isFaint: state === 'done' || state === 'left-out',
      words: usual === null ? words : `${words} Usually: ${say(usual.from)} to ${say(usual.to)}.`,
    })),
    ...season.work
      // The window of a stop says it already; what has lapsed is not held against anyone.
      .filter(({ kind, state }) => kind !== 'stop' && state !== 'lapsed')
      .map(({ key, day: on, dueBy, what, state, stateInWords }) => ({
        key,
        shape: 'work' as const,
        from: day(on),
        to: day(dueBy),
        isFaint: state === 'done' || state === 'skipped',
        words: `${say(on)}${dueBy > on ? ` to ${say(dueBy)}` : ''}: ${what}${stateInWords ? ` ${stateInWords}` : ''}`,
      })),
    ...season.shows.map(({ id, name, day: on }) => ({
      key: `show ${id}`,
      shape: 'show' as const,
      from: on,
      to: on,
      isFaint: id !== season.aimShowId,
      words: `${name}, ${say(on)}.${id === season.aimShowId ? ' The stops are planned for it.' : ''}`,
    })),
    ...season.stops.map(({ id, day: on, depth, note }) => ({
      key: id,
      shape: depth === 'tip' ? ('stop-tip' as const) : ('stop-deep' as const),
      from: day(on),
      to: day(on),
      isFaint: false,
      words: `${STOP_WORDS[depth]} on ${say(on)}.${note ? ` ${ownWords(note)}` : ''}`,
    })),
    ...season.notes.map(({ id, day: on, kind, text }) => ({
      key: id,
      shape: logShape(kind),
      from: day(on),
      to: day(on),
      isFaint: false,
      words: `${LOG_WORDS[kind]}, ${say(on)}.${text ? ` ${ownWords(text)}` : ''}`,
    })),
  ];
}

function bloomMark({ bloom90, bloomLastsDays }: DrawnSeason, say: (on: string) => string): SeasonMark[] {
  if (bloom90 === null || bloomLastsDays === null) return [];
  const [from, to] = bloom90;
  return [
    {
      key: 'bloom',
      shape: 'bloom',
      from: day(from),
      to: addDays(day(to), bloomLastsDays - 1),
      isFaint: false,
      words: `Full bloom begins ${say(from)} to ${say(to)}, nine times in ten, and lasts about ${bloomLastsDays} days.`,
    },
  ];
}

const TROUBLE: readonly LogKind[] = ['seen-whitefly', 'seen-grey-mould', 'seen-wilt'];
const BLOOM: readonly LogKind[] = ['first-flower', 'full-bloom', 'bloom-taken-off', 'bloom-over'];

function logShape(kind: LogKind): MarkShape {
  if (TROUBLE.includes(kind)) return 'trouble';
  return BLOOM.includes(kind) ? 'bloom-seen' : 'log';
}
