import { type Day, daysBetween } from '../day/day.ts';
import { lightToBaseWords } from './compare-gaps.ts';
import type { Gaps } from './gaps.ts';

/** Gaps of one photo that may be compared with others of its side. */
export interface GapsSeen {
  readonly day: Day;
  readonly turnDeg: number | null;
  readonly gaps: Gaps;
}

/** What a clean-up did for the light at the base. */
export interface CleanUp {
  readonly before: GapsSeen | null;
  readonly after: GapsSeen | null;
  readonly words: string;
}

/** Farther from the clean-up the plant has changed by itself. */
const NEAR_DAYS = 14;

/**
 * Light at the base before and after leaf was cleared.
 *
 * @param clearedOn the day; a photo of that day is taken to show the plant before
 * @param seen photos in order of day
 * @returns the last photo before and the first after it of the same side, and what they say
 */
export function cleanUpOf(clearedOn: Day, seen: readonly GapsSeen[]): CleanUp {
  const near = seen.filter(({ day }) => Math.abs(daysBetween(day, clearedOn)) <= NEAR_DAYS);
  const earlier = near.filter(({ day }) => day <= clearedOn);
  const later = near.filter(({ day }) => day > clearedOn);
  for (const before of earlier.toReversed()) {
    const after = later.find(({ turnDeg }) => turnDeg === before.turnDeg);
    if (after !== undefined) return { before, after, words: lightToBaseWords(before.gaps, after.gaps) };
  }
  const [before, after] = [earlier.at(-1) ?? null, later[0] ?? null];
  return { before, after, words: WHY_NOT[before === null ? 'before' : after === null ? 'after' : 'side'] };
}

const WHY_NOT = {
  before: 'No photo of the two weeks before shows how much light reached the base then.',
  after: 'The next photo of the same side shows what it did for the light at the base.',
  side: 'The photos before and after show different sides, so the light at the base cannot be compared.',
} as const;
