import type { BloomReading } from '../../../core/bloom/bloom-readings.ts';
import type { BloomLesson } from '../../../core/bloom/expected-bloom.ts';
import { addDays, day } from '../../../core/day/day.ts';
import { chances } from '../growth/simulated-seasons.ts';

/** The first photo of every simulated bloom. */
export const FIRST_DAY = day('2026-03-01');

/** How the rise runs in truth; only the first is what is fitted. */
export const RISES = ['logistic', 'gompertz', 'straight'] as const;

export interface BloomOptions {
  readonly rise: (typeof RISES)[number];
  /** How many times as much readings scatter as their plus-minus says; `null`: no plus-minus is stated. */
  readonly noise: number | null;
  /** Days from first colour to full bloom are drawn evenly (in the logarithm) from this range. */
  readonly riseDays: readonly [least: number, most: number];
}

/** A bloom of known days with the photos of it, a week apart. */
export interface SimulatedBloom {
  readonly readings: readonly BloomReading[];
  /** Days since the first photo: 5 %, 50 %, 80 % of the rise, and where less than 80 % is left. */
  readonly firstColour: number;
  readonly half: number;
  readonly full: number;
  readonly fading: number;
  /** Share of the canopy that is in flower in truth. */
  readonly trueShare: (days: number) => number;
  /** What the same plant's other years would show: a fifth more or less. */
  readonly lesson: BloomLesson;
}

/** What one bloom is drawn from, days and shares; each evenly in its range. Invented numbers. */
export const DRAWN = {
  fullShare: [0.12, 0.6],
  lastsDays: [8, 35],
  /** Days that it falls ÷ days that it rose. */
  fallOfRise: [0.6, 2],
  /** Days since the first photo. */
  firstColour: [30, 70],
} as const satisfies Record<string, readonly [least: number, most: number]>;

/** All that the course of a simulated bloom hangs on. */
export type BloomDraw = Readonly<
  Record<keyof typeof DRAWN | 'riseDays', number> & { rise: (typeof RISES)[number] }
>;

/** Where there is less flower than this none is told from leaf: readings then scatter by a part of what they state. */
export const UNSEEN = { share: 0.002, scatter: 1 / 6 };

/**
 * One bloom, photographed about once a week from long before the first colour until long after.
 *
 * Notes: the plus-minus is 2–4 points and a tenth of the share; a photo may be up to two days early or late and one in nine is missed.
 * Invented numbers, as in `DRAWN`.
 */
export function simulateBloom(seed: number, { rise, noise, riseDays }: BloomOptions): SimulatedBloom {
  const { normal, uniform } = chances(seed);
  const evenly = ([least, most]: readonly [number, number]) => least + (most - least) * uniform();
  const fullShare = evenly(DRAWN.fullShare);
  const riseTook = riseDays[0] * (riseDays[1] / riseDays[0]) ** uniform();
  const lastsDays = evenly(DRAWN.lastsDays);
  const fallOfRise = evenly(DRAWN.fallOfRise);
  const firstColour = evenly(DRAWN.firstColour);
  const atShare = (share: number) => firstColour + riseTook * RISEN[rise].placeOf(share);
  const full = atShare(0.8);
  const fading = full + lastsDays;
  const trueShare = courseOf({ rise, fullShare, riseDays: riseTook, lastsDays, fallOfRise, firstColour });
  const statedPoints = 0.02 + 0.02 * uniform();
  const readings: BloomReading[] = [];
  for (let week = 0; 7 * week < fading + 2 * fallOfRise * riseTook; week++) {
    const at = 7 * week + (week === 0 ? 0 : Math.floor(5 * uniform()) - 2);
    const share = trueShare(at);
    const plusMinus = Math.hypot(statedPoints, 0.1 * share);
    const seen = share + (((noise ?? 1) * plusMinus) / 1.96) * normal();
    if (uniform() < 1 / 9) continue;
    const told = share < UNSEEN.share ? UNSEEN.scatter * Math.abs(seen - share) : seen;
    readings.push({
      day: addDays(FIRST_DAY, at),
      share: Math.max(0, Math.min(1, told)),
      plusMinus: noise === null ? null : plusMinus,
    });
  }
  const otherYear = () => Math.exp(0.2 * normal());
  const lesson = { fullShare: fullShare * otherYear(), riseDays: riseTook * otherYear() };
  return { readings, firstColour, half: atShare(0.5), full, fading, trueShare, lesson };
}

/** Share of the canopy in flower, by days since the first photo. */
export function courseOf({ rise, fullShare, riseDays, lastsDays, fallOfRise, firstColour }: BloomDraw) {
  const fading = firstColour + riseDays + lastsDays;
  const { shareAt } = RISEN[rise];
  const fallen = (days: number) =>
    RISEN.logistic.shareAt(FADING_PLACE + (days - fading) / (fallOfRise * riseDays));
  return (days: number) => fullShare * shareAt((days - firstColour) / riseDays) * (1 - fallen(days));
}

/** Logistic place, 0 at 5 % and 1 at 80 %, where 20 % are open. */
const logit = (share: number) => Math.log(share / (1 - share));
const FADING_PLACE = (logit(0.2) - logit(0.05)) / (logit(0.8) - logit(0.05));

/** Rises from 5 % at place 0 to 80 % at place 1. */
const RISEN = {
  logistic: ofCurve(
    (x) => 1 / (1 + Math.exp(-x)),
    (share) => logit(share),
  ),
  gompertz: ofCurve(
    (x) => Math.exp(-Math.exp(-x)),
    (share) => -Math.log(-Math.log(share)),
  ),
  straight: ofCurve(
    (x) => Math.max(0, Math.min(1, x)),
    (share) => share,
  ),
} as const;

function ofCurve(shareAt: (x: number) => number, placeOf: (share: number) => number) {
  const [from, to] = [placeOf(0.05), placeOf(0.8)];
  return {
    shareAt: (place: number) => shareAt(from + place * (to - from)),
    placeOf: (share: number) => (placeOf(share) - from) / (to - from),
  };
}
