import type { StopDepth } from '../cut/cut.ts';
import { addDays, type Day } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { bloomBegins, chanceInBloom } from './bloom-likely.ts';
import { chanceLate } from './last-stop.ts';
import type { NormalGamma } from './normal-gamma.ts';

/** What a last stop on one day means for the show. */
export interface StopEffect {
  readonly stopDay: Day;
  readonly depth: StopDepth;
  /** Chance that full bloom begins only after the show. */
  readonly chanceLate: number;
  /** Chance to be in full bloom on the show day. */
  readonly chanceInBloom: number;
  /** Full bloom begins between these days nine times in ten. */
  readonly bloom90: readonly [from: Day, to: Day];
  readonly words: string;
}

/**
 * What a stop on a given day brings about.
 *
 * @param lastsDays how long full bloom lasts, whole days
 *
 * Example words: "The chance of being late is 34 %; full bloom begins 12 June 2026 to 30 June 2026, nine times in ten."
 */
export function effectOfStop(
  { stopDay, depth, showDay }: { stopDay: Day; depth: StopDepth; showDay: Day },
  belief: NormalGamma,
  lastsDays: number,
): StopEffect {
  const late = chanceLate(belief, stopDay, showDay);
  const bloom90 = bloomBegins(belief, stopDay, 0.9);
  const inBloom = chanceInBloom(belief, stopDay, lastsDays, showDay);
  const overBefore = addDays(bloom90[1], lastsDays) <= showDay;
  const early = overBefore
    ? ' Left alone, it is most likely over before the show: early bloom can be taken off.'
    : '';
  return {
    stopDay,
    depth,
    chanceLate: late,
    chanceInBloom: inBloom,
    bloom90,
    words: `The chance of being late is ${percent(late)}; full bloom begins ${dayInWords(bloom90[0])} to ${dayInWords(bloom90[1])}, nine times in ten.${early}`,
  };
}

/** A chance as a grower reads it: never a flat 0 or 100 %. */
export function percent(chance: number): string {
  if (chance < 0.01) return 'under 1 %';
  if (chance > 0.99) return 'over 99 %';
  return `${Math.round(100 * chance)} %`;
}
