import type { SittingReports } from '../advice/plant-history.ts';
import { type Day, daysBetween } from '../day/day.ts';
import { expectation } from '../errors/expect.ts';

/** Share of the canopy in flower on one day. */
export interface BloomReading {
  readonly day: Day;
  /** 0–1. */
  readonly share: number;
  /** 95 % repeatability; `null` when not known. */
  readonly plusMinus: number | null;
}

/** A reading as it is fitted. */
export interface TimedShare {
  /** Since the stretch's first reading. */
  readonly days: number;
  readonly share: number;
  /** One standard deviation. */
  readonly sd: number;
}

/** Half-width of the normal distribution's middle 95 %. */
const SDS_OF_PLUS_MINUS = 1.96;
/** Where no plus-minus is known, one standard deviation: 2 points, and a twelfth of the share. Our own choice. */
const UNTOLD = { sd: 0.02, ofShare: 1 / 12 };

/**
 * Share of canopy in flower at each sitting: the mean of the views that were measured.
 *
 * @param sittings in any order
 * @returns one reading a sitting with a measured view, oldest first; a view in which no flower was told from leaf counts as 0
 *
 * Notes: the flower that the camera sees. A sitting of four sides reads steadier than one of a single side; it is one reading all the same.
 * What the grower left out as limp is left out here too. The plus-minus is the mean of the views': what makes one read high, light above all, mostly
 * makes the others read high as well.
 */
export function bloomReadings(sittings: readonly SittingReports[]): BloomReading[] {
  return sittings
    .flatMap(({ day, reports, leftOut }) => {
      if (leftOut != null) return [];
      const views = reports.flatMap(({ canopy, flower }) =>
        canopy === null
          ? []
          : [{ share: flower?.share ?? canopy.flowerShare ?? 0, plusMinus: flower?.plusMinus ?? null }],
      );
      return views.length === 0 ? [] : [readingOfViews(day, views)];
    })
    .sort((one, other) => (one.day < other.day ? -1 : 1));
}

/** One reading of a sitting's views, at least one. */
export function readingOfViews(day: Day, views: readonly Omit<BloomReading, 'day'>[]): BloomReading {
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
  const doubts = views.map(({ plusMinus }) => plusMinus);
  return {
    day,
    share: mean(views.map(({ share }) => share)),
    plusMinus: doubts.includes(null) ? null : mean(doubts as number[]),
  };
}

/**
 * The readings of the bloom that is going on: those after the last stop or the last time that heads were taken off.
 *
 * @param readings in any order; a reading of such a day shows the plant before
 * @param startsAgain days of stops and of bloom taken off
 * @param today readings and days after it are not yet
 */
export function bloomStretch(
  readings: readonly BloomReading[],
  startsAgain: readonly Day[],
  today: Day,
): BloomReading[] {
  const since =
    startsAgain
      .filter((day) => day <= today)
      .sort()
      .at(-1) ?? null;
  return readings
    .filter(({ day }) => day <= today && (since === null || day > since))
    .sort((one, other) => (one.day < other.day ? -1 : 1));
}

/** Readings counted in days from the first, each with its standard deviation. */
export function timedShares(readings: readonly BloomReading[]): TimedShare[] {
  return readings.map(({ day, share, plusMinus }) => {
    if (!(share >= 0 && share <= 1)) throw new RangeError(expectation('a share from 0 to 1', 'share', share));
    return {
      days: daysBetween((readings[0] as BloomReading).day, day),
      share,
      sd: plusMinus === null ? Math.hypot(UNTOLD.sd, UNTOLD.ofShare * share) : plusMinus / SDS_OF_PLUS_MINUS,
    };
  });
}
