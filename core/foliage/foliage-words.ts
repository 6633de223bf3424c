import type { FoliageShares } from '../report.ts';
import { changeSince } from '../trend/change-since.ts';
import type { LeafShare, YellowZone } from './foliage.ts';

/** What a change in the leaf asks for. Names no cause: it says what to look for. */
export interface FoliageAdvice {
  readonly tone: 'yellow' | 'brown';
  /** What was measured. */
  readonly finding: string;
  /** What to do, and where. */
  readonly act: string;
  readonly lookFor: string;
  readonly caution: string;
}

const LOOK_FOR = {
  yellow:
    'Look for: compost that stayed wet or went dry, leaf crowded out of the light, pale veins or pale leaf between them, and small animals on the undersides. Colour alone does not tell which it is.',
  brown:
    'Look for: whether it is the margin, spots or whole leaves, soft or crisp; sun, dry air and missed water come to mind first. Colour alone does not tell which it is.',
} as const;

const CAUTION =
  'Take off by hand what comes away, the rest with clean scissors, and leave none of it on the compost: dead leaf moulds. Keep it from cats and dogs. If you mean to spray or feed, the label and local rules decide.';

/**
 * What to do about yellow or brown leaf: only when its share has risen by more than the plus-minus of both sittings.
 *
 * @param now and @param before two sittings of one plant, `before` the earlier one
 * @returns the larger rise; `null` when neither rose for sure, or the two cannot be compared
 *
 * Notes: clearing dead and yellow leaf against mould is common practice, no source.
 */
export function foliageAdvice(now: FoliageShares, before: FoliageShares): FoliageAdvice | null {
  if (now.notCompared !== null || before.notCompared !== null || now.against !== before.against) return null;
  const rises = (['yellow', 'brown'] as const)
    .map((tone) => ({ tone, by: riseOf(before[tone], now[tone]) }))
    .filter(({ by }) => by > 0)
    .sort((one, other) => other.by - one.by);
  const tone = rises[0]?.tone;
  if (tone === undefined) return null;
  return {
    tone,
    finding: `${tone === 'yellow' ? 'Yellow' : 'Brown'} leaf rose from ${leafPercent(before[tone])} to ${leafPercent(now[tone])} of the leaf seen.`,
    act:
      tone === 'yellow'
        ? `Clear the yellow leaves${placesInWords(now.where)}${mayBeFlower(now) ? ', unless those are yellow flowers' : ''}.`
        : 'Take off leaves that are dead, and look at those that are brown in part.',
    lookFor: LOOK_FOR[tone],
    caution: CAUTION,
  };
}

function riseOf(before: LeafShare, now: LeafShare): number {
  const { direction, by } = changeSince(
    { value: before.share, plusMinus: before.plusMinus },
    { value: now.share, plusMinus: now.plusMinus },
  );
  return direction === 'up' ? by : 0;
}

/** "9 % (± 2)". */
export function leafPercent({ share, plusMinus }: LeafShare): string {
  return `${Math.round(100 * share)} % (± ${Math.max(1, Math.round(100 * plusMinus))})`;
}

/** Places named at most, the one with most yellow first. */
const MOST_PLACES = 2;

/** " low on the left and half-way up on the right"; empty when yellow stands nowhere together. */
export function placesInWords(zones: readonly YellowZone[]): string {
  const areas = new Map<string, number>();
  for (const { place, areaShare } of zones) areas.set(place, (areas.get(place) ?? 0) + areaShare);
  const named = [...areas].sort(([, one], [, other]) => other - one).slice(0, MOST_PLACES);
  return named.length === 0 ? '' : ` ${named.map(([place]) => place).join(' and ')}`;
}

/**
 * Whether yellow may be flower: it is more than its plus-minus, and most of what stands together stands high, where flowers stand. Leaf mostly turns
 * yellow from below (common practice, no source).
 */
export function mayBeFlower({ yellow, where }: Pick<FoliageShares, 'yellow' | 'where'>): boolean {
  if (yellow.share <= yellow.plusMinus) return false;
  let [high, all] = [0, 0];
  for (const { place, areaShare } of where) {
    all += areaShare;
    if (place.startsWith('high')) high += areaShare;
  }
  return high > all / 2;
}
