import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Days } from '../api/sittings.ts';
import { daysHeldAgainst } from '../plant/days-asked.ts';
import { type Leaf, leavesOf, measuredBefore } from '../plant/leafing.ts';
import { onDay } from '../plant/use-page-with.ts';

/** Two photos of one side, the later one first, that are often laid over each other. */
export interface ComparePair {
  readonly name: string;
  readonly later: Leaf;
  readonly earlier: Leaf;
}

/** The days of older sittings that the pairs are made of, should they be known in a line only. */
export function daysOfPairs(page: PlantPage): Days[] {
  const newest = leavesOf(page.sittings).find(({ view }) => view.report?.status === 'measured');
  if (newest === undefined) return [];
  const sameSide = page.earlier.filter(({ views }) =>
    views.some((view) => view.isMeasured && (view.turnDeg ?? 0) === (newest.view.turnDeg ?? 0)),
  );
  const first = sameSide.at(-1);
  return [...daysHeldAgainst(page, newest), ...(first ? [onDay(first.day)] : [])];
}

const SINCE_STOP = 'Since the last stop';

/** The pair that tells what came of the last stop; `null` without one. */
export function pairSinceStop(page: Pick<PlantPage, 'sittings' | 'stops'>): ComparePair | null {
  return comparePairs(page).find(({ name }) => name === SINCE_STOP) ?? null;
}

/** The pairs that one tap chooses, as far as there are photos for them: since the last sitting, since the last stop, since the first photo. */
export function comparePairs(page: Pick<PlantPage, 'sittings' | 'stops'>): ComparePair[] {
  const leaves = leavesOf(page.sittings).filter(({ view }) => view.report?.status === 'measured');
  const newest = leaves[0];
  if (!newest) return [];
  const ofSide = leaves.filter(({ view }) => (view.turnDeg ?? 0) === (newest.view.turnDeg ?? 0));
  const stop = page.stops
    .map(({ day }) => day)
    .filter((day) => day <= newest.sitting.day)
    .sort()
    .at(-1);
  // The photo of the day itself shows the plant before the knife; one of a day before serves as well.
  const beforeStop = stop ? ofSide.find(({ sitting, view }) => sitting.day <= stop && !view.afterWork) : null;
  const pairs: [string, Leaf | null | undefined][] = [
    ['Since the last sitting', measuredBefore(page.sittings, newest)],
    [SINCE_STOP, beforeStop],
    ['Since the first photo', ofSide.at(-1)],
  ];
  return pairs.flatMap(([name, earlier]) =>
    earlier && earlier.sitting.day < newest.sitting.day ? [{ name, later: newest, earlier }] : [],
  );
}
