import type { Day } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { FoliageShares } from '../report.ts';
import { type Change, changeSince } from '../trend/change-since.ts';
import { leafPercent, placesInWords } from './foliage-words.ts';

/** The leaf of one photo. */
export interface LeafSeen {
  readonly day: Day;
  /** The azimuth that faces the camera; `null` when not told. */
  readonly turnDeg: number | null;
  readonly foliage: FoliageShares;
  /** Days of the sittings that its own normal leaf was learned from; `null` when it was judged by what is usual. */
  readonly normalFrom: readonly Day[] | null;
}

/** How one share changed from one sitting to the next. */
export interface LeafChange extends Change {
  readonly tone: 'yellow' | 'brown';
}

/** Whether two photos of a plant's leaf may be held against each other: the same side, white known in both, and the same normal. */
export function areLeavesComparable(one: LeafSeen, other: LeafSeen): boolean {
  return (
    one.turnDeg === other.turnDeg &&
    one.foliage.notCompared === null &&
    other.foliage.notCompared === null &&
    one.foliage.against === other.foliage.against &&
    String(one.normalFrom) === String(other.normalFrom)
  );
}

/** Change of yellow and of brown leaf between two photos that may be compared. */
export function leafChanges(now: LeafSeen, before: LeafSeen): LeafChange[] {
  return (['yellow', 'brown'] as const).map((tone) => {
    const [earlier, later] = [before.foliage[tone], now.foliage[tone]];
    return {
      tone,
      ...changeSince(
        { value: earlier.share, plusMinus: earlier.plusMinus },
        { value: later.share, plusMinus: later.plusMinus },
      ),
    };
  });
}

/**
 * Of a sitting's photos the one that says most about its leaf, with the photo it is to be held against.
 *
 * @param sitting photos of one day, at least one
 * @param earlier photos of earlier days, oldest first
 * @returns the photo whose yellow or brown rose most for sure; else the one with most yellow
 */
export function tellingLeaf<Seen extends LeafSeen>(
  sitting: readonly Seen[],
  earlier: readonly Seen[],
): { readonly now: Seen; readonly before: Seen | null } {
  const pairs = sitting.map((now) => {
    const before = earlier.findLast((one) => areLeavesComparable(now, one)) ?? null;
    const rise = before === null ? 0 : Math.max(0, ...leafChanges(now, before).map(sureRise));
    return { now, before, rise };
  });
  const [first, ...others] = pairs;
  if (first === undefined) throw new RangeError('Expected a photo of the sitting but received none');
  return others.reduce((most, pair) => {
    if (pair.rise !== most.rise) return pair.rise > most.rise ? pair : most;
    return pair.now.foliage.yellow.share > most.now.foliage.yellow.share ? pair : most;
  }, first);
}

function sureRise({ direction, by }: Change): number {
  return direction === 'up' ? by : 0;
}

/**
 * What the leaf does, in a sentence or two. Names no cause.
 *
 * Example: "Yellow leaf rose from 3 % (± 2) to 9 % (± 2) since 17 May 2026, low on the left. Brown: no change, 0 % (± 1)."
 */
export function leafWords(now: LeafSeen, before: LeafSeen | null): string {
  const { yellow, brown, where } = now.foliage;
  const shares = `${leafPercent(yellow)} of the leaf seen is yellow${yellow.share > yellow.plusMinus ? placesInWords(where) : ''}, ${leafPercent(brown)} brown.`;
  if (before === null) {
    return `${shares} No earlier sitting shows this side judged by the same measure, so no change can be told yet.`;
  }
  const changes = leafChanges(now, before);
  const since = dayInWords(before.day);
  if (changes.every(({ direction }) => direction === 'none')) {
    return `No change in yellow or brown leaf since ${since}: ${shares}`;
  }
  return changes
    .map(({ tone, direction }) => {
      const name = tone === 'yellow' ? 'Yellow' : 'Brown';
      if (direction === 'none') return `${name}: no change, ${leafPercent(now.foliage[tone])}.`;
      const place = tone === 'yellow' && direction === 'up' ? placesInWords(where) : '';
      const verb = direction === 'up' ? 'rose' : 'fell';
      const [from, to] = [leafPercent(before.foliage[tone]), leafPercent(now.foliage[tone])];
      return `${name} leaf ${verb} from ${from} to ${to} since ${since}${place && `,${place}`}.`;
    })
    .join(' ');
}
