import { addDays, type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { PlantKind } from '../plant.ts';
import { DEFAULT_STOPS } from '../season/default-stops.ts';
import { type UsualWindow, usualWindows } from '../season/stop-defaults.ts';
import type { StopDepth } from './cut.ts';

/** Whose bloom is put off, and from when. */
export interface DateOfCut {
  readonly kind: PlantKind;
  readonly today: Day;
  readonly showDay: Day | null;
}

/**
 * What a stop all round today does to the date of bloom.
 *
 * @param depth of the stop that is needed
 * @param cut kind of plant, today and the show
 * @returns sentences; where no figure is known they say so
 *
 * Reference: the weeks before the show in `usualWindows`, read forwards.
 *
 * Example: a deep stop of a regal on 1 January 2026 brings bloom about 18 June to 2 July 2026.
 */
export function dateEffectWords(depth: StopDepth, cut: DateOfCut): string {
  const rules = usualWindows(cut.kind, DEFAULT_STOPS);
  const rule = rules.find((candidate) => candidate.depth === depth);
  if (rule !== undefined) return bloomWords(`A ${depth} stop today`, rule, cut);
  const tip = rules.find((candidate) => candidate.depth === 'tip');
  if (tip === undefined) {
    return `How long this kind takes from a ${depth} stop to bloom is not known: go by your own records.`;
  }
  return `No figure is known for a deep stop of this kind. It takes longer than a tip stop. ${bloomWords('A tip stop today', tip, cut)}`;
}

function bloomWords(
  stop: string,
  { fromDaysBefore, toDaysBefore, standing }: UsualWindow,
  cut: DateOfCut,
): string {
  const [first, last] = [addDays(cut.today, toDaysBefore), addDays(cut.today, fromDaysBefore)];
  return `${stop} brings bloom about ${dayInWords(first)} to ${dayInWords(last)}${againstShow(first, last, cut.showDay)}. ${standing}`;
}

function againstShow(first: Day, last: Day, showDay: Day | null): string {
  if (showDay === null) return '';
  const [early, late] = [daysBetween(last, showDay), daysBetween(showDay, first)];
  if (late > 0) return `, ${days(late)} or more after the show`;
  if (early > 0) return `, ${days(early)} or more before the show`;
  return ', in time for the show';
}

function days(count: number): string {
  return count === 1 ? '1 day' : `${count} days`;
}
