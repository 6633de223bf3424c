import { addDays, type Day, day, daysBetween } from '../../../core/day/day.ts';
import { EXPLAINS_SHAPE, LOG_WORDS } from '../../../core/season/log-entry.ts';
import type { Turn } from '../../../server/schemas/light.ts';
import type { Note } from '../../../server/schemas/sitting.ts';
import { shortDayWords } from '../words/day-words.ts';
import type { SeriesPoint } from './series.ts';

/** What was done or seen on one day that may explain a fall in the score; numbered on the chart and in the list below it. */
export interface TrendMark {
  readonly number: number;
  readonly day: Day;
  readonly words: string;
}

/** What happened so long before the first sitting may still show in it. */
const BEFORE_DAYS = 14;

/** The lines of the log that may explain a shape, a mark a day, oldest first; only those that the sittings could show. */
export function trendMarks(notes: readonly Note[], series: readonly SeriesPoint[]): TrendMark[] {
  const [first, last] = [series[0], series.at(-1)];
  if (!first || !last) return [];
  const from = addDays(first.day, -BEFORE_DAYS);
  const byDay = new Map<Day, string[]>();
  for (const note of notes.toSorted((one, other) => (one.day < other.day ? -1 : 1))) {
    const on = day(note.day);
    if (!EXPLAINS_SHAPE.includes(note.kind) || on < from || on > last.day) continue;
    byDay.set(on, [...(byDay.get(on) ?? []), `${LOG_WORDS[note.kind]}. ${note.text}`.trim()]);
  }
  return [...byDay].map(([on, words], at) => ({ number: at + 1, day: on, words: words.join(' ') }));
}

/** The days in this time on which the pot was turned, oldest first. */
export function turnedDays(turns: readonly Pick<Turn, 'day'>[], first: Day, last: Day): Day[] {
  const days = turns.map((turn) => day(turn.day)).filter((on) => on >= first && on <= last);
  return [...new Set(days)].sort();
}

/** "▲ turned on 23 Aug, 11 Oct": what the small triangles on the axis stand for. */
export function turnedWords(days: readonly Day[]): string {
  return `▲ on the axis: turned on ${days.map((on) => shortDayWords(on)).join(', ')}.`;
}

/** A mark with the row it stands in, so that two near ones do not cover each other. */
export interface PlacedMark extends TrendMark {
  readonly row: number;
}

/** Rows for marks that would stand closer than `leastDays` in one. */
export function placedMarks(marks: readonly TrendMark[], leastDays: number): PlacedMark[] {
  const lastInRow: Day[] = [];
  return marks.map((mark) => {
    const free = lastInRow.findIndex((before) => daysBetween(before, mark.day) >= leastDays);
    const row = free < 0 ? lastInRow.length : free;
    lastInRow[row] = mark.day;
    return { ...mark, row };
  });
}

/** A show so far ahead, as a part of the time shown, is still drawn on the axis. */
const SHOW_ROOM = 0.25;
const LEAST_SHOW_ROOM_DAYS = 14;

/** Whether the show day stands near enough to the sittings to be drawn with them. */
export function isShowDrawn(showDay: Day, first: Day, last: Day): boolean {
  const room = Math.max(LEAST_SHOW_ROOM_DAYS, SHOW_ROOM * daysBetween(first, last));
  return showDay >= first && daysBetween(last, showDay) <= room;
}
