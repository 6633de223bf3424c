import { addDays, day, daysBetween } from '../../../core/day/day.ts';
import { seededNoise } from '../../../core/measures/seeded-noise.ts';
import { defaultBelief } from '../../../core/season/days-to-bloom.ts';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';
import { lastStop } from '../../../core/season/last-stop.ts';
import {
  chanceBelow,
  meanInterval,
  type NormalGamma,
  nextPoint,
  updated,
} from '../../../core/season/normal-gamma.ts';

/** Days to full bloom of one grower: true mean and standard deviation, and how they fall. */
export interface Grower {
  readonly meanDays: number;
  readonly sdDays: number;
  /** The next plant's days, not rounded. */
  readonly nextDays: () => number;
}

/** Where growers come from. */
export type World = (normal: () => number) => Grower;

/** The regals' tip stop: mean 122.5 days, spread 10.5. */
export const REGAL = { meanDays: 122.5, spreadDays: 10.5 } as const;

/** What is held before any record. */
export const DEFAULT_BELIEF = defaultBelief(REGAL.meanDays, REGAL.spreadDays, DEFAULT_STOPS.weighing);

/** The same with mean and spread as good as known. */
export const SURE_BELIEF: NormalGamma = {
  mean: REGAL.meanDays,
  count: 1e6,
  shape: 150,
  rate: 150 * REGAL.spreadDays ** 2,
};

function normalGrower(normal: () => number, meanDays: number, sdDays: number): Grower {
  return { meanDays, sdDays, nextDays: () => meanDays + sdDays * normal() };
}

export const WORLDS = {
  /** Mean and spread are those of the table. */
  'known spread': (normal) => normalGrower(normal, REGAL.meanDays, REGAL.spreadDays),
  /** Each grower has a mean and a spread of their own, as far from the table's as the table says. */
  'as the table says': (normal) => {
    const { mean, count, shape, rate } = DEFAULT_BELIEF;
    let squares = 0;
    for (let k = 0; k < 2 * shape; k++) squares += normal() ** 2;
    const sdDays = Math.sqrt((2 * rate) / squares);
    return normalGrower(normal, mean + (sdDays / Math.sqrt(count)) * normal(), sdDays);
  },
  /** Everybody needs three weeks longer than the table says, with an ordinary spread. */
  'table 3 weeks short': (normal) => normalGrower(normal, REGAL.meanDays + 21, 8),
  'table 3 weeks long': (normal) => normalGrower(normal, REGAL.meanDays - 21, 8),
  /** The growers' seasons differ half as much again as the table's spread. */
  'seasons differ more': (normal) => normalGrower(normal, REGAL.meanDays, 1.5 * REGAL.spreadDays),
  /** A long tail to the late side: a log-normal of the table's spread. */
  'skewed to late': (normal) => ({
    meanDays: REGAL.meanDays,
    sdDays: REGAL.spreadDays,
    nextDays: () => {
      const log = 0.6;
      const scale = REGAL.spreadDays / Math.sqrt((Math.exp(log ** 2) - 1) * Math.exp(log ** 2));
      return REGAL.meanDays + scale * (Math.exp(log * normal()) - Math.exp(log ** 2 / 2));
    },
  }),
} as const satisfies Record<string, World>;

export interface Tally {
  /** Share of plants whose full bloom, noted as a whole day, came after the show. */
  readonly late: number;
  /** What the plans had said, on average. */
  readonly said: number;
  /** Share late if stops could be done at any moment and not on whole days only. */
  readonly lateUnrounded: number;
  /** Share of growers whose true mean lies in the 90 % interval. */
  readonly meanHeld: number;
  /** Share of next plants that fall into their 90 % range. */
  readonly nextHeld: number;
  /** Root mean square of learned less true mean, days. */
  readonly meanOffDays: number;
  /** Days before the show on average. */
  readonly daysBefore: number;
}

const SHOW = day('2026-06-20');
const ACCEPTED = DEFAULT_STOPS.weighing.acceptedLate.value;

/**
 * Lets so many growers note some seasons, plan the last stop and see how the next plant does.
 *
 * @param records seasons on record before
 */
export function simulateGrowers(
  world: World,
  belief: NormalGamma,
  { growers, records, seed }: { growers: number; records: number; seed: number },
): Tally {
  const { normal } = seededNoise(seed);
  const sums = { late: 0, said: 0, lateUnrounded: 0, meanHeld: 0, nextHeld: 0, square: 0, daysBefore: 0 };
  for (let k = 0; k < growers; k++) {
    const grower = world(normal);
    const noted = Array.from({ length: records }, () => Math.round(grower.nextDays()));
    const learned = updated(belief, noted);
    const plan = lastStop(learned, { showDay: SHOW, acceptedLate: ACCEPTED, windowDays: 7 });
    const next = grower.nextDays();
    if (addDays(plan.lastDay, Math.round(next)) > SHOW) sums.late++;
    if (next > nextPoint(learned, 1 - ACCEPTED)) sums.lateUnrounded++;
    sums.said += plan.chanceLate;
    const [low, high] = meanInterval(learned, 0.9);
    if (low <= grower.meanDays && grower.meanDays <= high) sums.meanHeld++;
    const below = chanceBelow(learned, next);
    if (below >= 0.05 && below <= 0.95) sums.nextHeld++;
    sums.square += (learned.mean - grower.meanDays) ** 2;
    sums.daysBefore += daysBetween(plan.lastDay, SHOW);
  }
  return {
    late: sums.late / growers,
    said: sums.said / growers,
    lateUnrounded: sums.lateUnrounded / growers,
    meanHeld: sums.meanHeld / growers,
    nextHeld: sums.nextHeld / growers,
    meanOffDays: Math.sqrt(sums.square / growers),
    daysBefore: sums.daysBefore / growers,
  };
}
