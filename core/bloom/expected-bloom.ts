import type { LogBell } from '../growth/expected-growth.ts';

/** A bell curve of days. */
export interface Bell {
  readonly mean: number;
  readonly sd: number;
}

/** What is held likely of a bloom before any colour is seen: bell curves of logarithms. */
export interface ExpectedBloom {
  /** ln of the share of canopy in flower at full bloom, 0–1. */
  readonly logFullShare: LogBell;
  /** ln of the days from first colour to full bloom. */
  readonly logRiseDays: LogBell;
  /** ln of the days that full bloom lasts. */
  readonly logLastsDays: LogBell;
  /**
   * First day of full bloom since the first reading, as the last stop lets expect it; `null` where nothing is held of it, and always where the day goes to
   * the records that such expectations are learned from.
   */
  readonly fullDays: Bell | null;
  readonly restsOn: 'plant' | 'guess';
}

/** What an earlier bloom of the plant showed. */
export interface BloomLesson {
  readonly fullShare: number;
  readonly riseDays: number;
}

/**
 * Stated defaults, which the app calls guesses: no published figure was found for regals. For fuchsias "once one shoot shows bud, the rest
 * follow in 7–10 days" (fuchsia society newsletter, April 2001), and one plant was in full bloom a week after its first flowers
 * (mybrokengarden.blogspot.com, August 2010); colour that a photo shows comes before the flower is open.
 */
export const BLOOM_GUESS = { fullShare: 0.35, riseDays: 15 } as const;

/** How far blooms differ, in standard deviations of the logarithm: from the guess, and from one bloom of a plant to the next. Guesses. */
const SPREADS = {
  fullShare: { guess: 0.55, bloom: 0.2 },
  riseDays: { guess: 0.45, bloom: 0.2 },
  lastsDays: 0.5,
} as const;

/**
 * What to expect of a plant's next bloom: its own earlier ones, else the guess.
 *
 * @param lastsDays days that full bloom of the kind lasts, above 0
 * @param lessons earlier blooms of the plant, in any order
 * @param fullDays full bloom as the last stop lets expect it, days since the first reading
 *
 * How: the plant's own logarithm is the mean of its blooms' and the guess, each weighted by 1 ÷ sd²; the next bloom differs from it by the
 * bloom's own part.
 *
 * Example: without lessons full bloom covers 0.35 of the canopy give or take a factor of 1.8.
 */
export function expectedBloom(
  lastsDays: number,
  lessons: readonly BloomLesson[] = [],
  fullDays: Bell | null = null,
): ExpectedBloom {
  const expected = (figure: keyof BloomLesson): LogBell => {
    const { guess, bloom } = SPREADS[figure];
    const weight = guess ** -2 + lessons.length * bloom ** -2;
    const sum = lessons.reduce(
      (total, lesson) => total + Math.log(lesson[figure]) * bloom ** -2,
      Math.log(BLOOM_GUESS[figure]) * guess ** -2,
    );
    return { mean: sum / weight, sd: lessons.length === 0 ? guess : Math.hypot(weight ** -0.5, bloom) };
  };
  return {
    logFullShare: expected('fullShare'),
    logRiseDays: expected('riseDays'),
    logLastsDays: { mean: Math.log(lastsDays), sd: SPREADS.lastsDays },
    fullDays,
    restsOn: lessons.length > 0 ? 'plant' : 'guess',
  };
}
