import { type Day, day, daysBetween } from '../../../core/day/day.ts';
import { LOG_WORDS, type LogKind } from '../../../core/season/log-entry.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { STOP_WORDS } from '../words/plant-words.ts';

/** What is marked beside the film's bar. */
export interface FilmMark {
  readonly key: string;
  readonly sign: 'stop-tip' | 'stop-deep' | 'turn' | 'bloom-seen';
  readonly day: Day;
  readonly words: string;
  /** Where it stands between the pictures: 2.5 is half-way from the third to the fourth. */
  readonly at: number;
}

const BLOOM: readonly LogKind[] = ['first-flower', 'full-bloom', 'bloom-taken-off', 'bloom-over'];

/** Stops, turns and bloom in the time of the film, oldest first. */
export function filmMarks(
  { stops, turns, notes }: Pick<PlantPage, 'stops' | 'turns' | 'notes'>,
  days: readonly Day[],
): FilmMark[] {
  const [first, last] = [days[0], days.at(-1)];
  if (!first || !last) return [];
  const marks = [
    ...stops.map(({ id, day: on, depth }) => ({
      key: id,
      sign: `stop-${depth}` as const,
      day: day(on),
      words: STOP_WORDS[depth],
    })),
    ...turns.map(({ id, day: on }) => ({ key: id, sign: 'turn' as const, day: day(on), words: 'Turned' })),
    ...notes
      .filter(({ kind }) => BLOOM.includes(kind) || kind === 'turned')
      .map(({ id, kind, day: on }) => ({
        key: id,
        sign: kind === 'turned' ? ('turn' as const) : ('bloom-seen' as const),
        day: day(on),
        words: LOG_WORDS[kind],
      })),
  ];
  return marks
    .filter((mark) => mark.day >= first && mark.day <= last)
    .map((mark) => ({ ...mark, at: placeBetween(mark.day, days) }))
    .sort((one, other) => one.at - other.at);
}

/** What was done or seen after the picture before this one, up to its own day. */
export function marksUpTo(marks: readonly FilmMark[], index: number): FilmMark[] {
  return marks.filter(({ at }) => at <= index && (at > index - 1 || index === 0));
}

function placeBetween(on: Day, days: readonly Day[]): number {
  const next = days.findIndex((one) => one >= on);
  if (next <= 0) return 0;
  const [before, after] = [days[next - 1] as Day, days[next] as Day];
  return next - 1 + daysBetween(before, on) / daysBetween(before, after);
}
