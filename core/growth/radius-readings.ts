import type { SittingReports } from '../advice/plant-history.ts';
import { type Day, daysBetween } from '../day/day.ts';
import { requirePositive } from '../errors/expect.ts';

/** The ball's radius on one day. */
export interface RadiusReading {
  readonly day: Day;
  readonly radiusMm: number;
  /** 95 % repeatability; `null` when not known. */
  readonly plusMinusMm: number | null;
}

/** Readings of one plant between two stops, oldest first, at least one. */
export interface GrowthStretch {
  /** The stop that began it; without one, the first sitting. */
  readonly since: Day;
  readonly begunBy: 'stop' | 'first-sitting';
  readonly readings: readonly TimedRadius[];
}

export interface TimedRadius {
  /** Since the stretch began. */
  readonly weeks: number;
  readonly radiusMm: number;
  /** One standard deviation of a reading, as far as the photo tells. */
  readonly sdMm: number;
}

const DAYS_A_WEEK = 7;
/** A plus-minus is 1.96 standard deviations of one reading. */
const SDS_OF_PLUS_MINUS = 1.96;
/** Where no plus-minus is known, one standard deviation as a share of the stretch's mean radius: our own choice, and what the readings scatter corrects it. */
const SD_SHARE = 0.015;

/**
 * The ball's radius at each sitting: the mean of the views that have a scale.
 *
 * @param sittings in any order
 * @returns one reading for each sitting that can be told in mm; sittings without are left out
 */
export function radiusReadings(sittings: readonly SittingReports[]): RadiusReading[] {
  return sittings.flatMap(({ day, reports }) => {
    const balls = reports.flatMap(({ ball }) =>
      ball === null || ball.radiusMm === null
        ? []
        : [{ radiusMm: ball.radiusMm, plusMinusMm: ball.radiusPlusMinusMm }],
    );
    return balls.length === 0 ? [] : [{ day, ...meanReading(balls) }];
  });
}

/**
 * Readings parted at the stops.
 *
 * @param readings in any order; several of one day count as their mean
 * @param stops in any order; a reading of a stop's day shows the plant before the cut
 * @returns stretches that have readings, oldest first
 */
export function growthStretches(readings: readonly RadiusReading[], stops: readonly Day[]): GrowthStretch[] {
  const cuts = [...stops].sort();
  const byStop = new Map<number, RadiusReading[]>();
  for (const reading of oneADay(readings)) {
    const stopsBefore = cuts.filter((stop) => stop < reading.day).length;
    byStop.set(stopsBefore, [...(byStop.get(stopsBefore) ?? []), reading]);
  }
  return [...byStop].map(([stopsBefore, stretch]) => {
    const stop = cuts[stopsBefore - 1];
    const since = stop ?? (stretch[0] as RadiusReading).day;
    const untoldSdMm = SD_SHARE * meanReading(stretch).radiusMm;
    return {
      since,
      begunBy: stop === undefined ? 'first-sitting' : 'stop',
      readings: stretch.map(({ day, radiusMm, plusMinusMm }) => ({
        weeks: weeksBetween(since, day),
        radiusMm,
        sdMm: plusMinusMm === null ? untoldSdMm : plusMinusMm / SDS_OF_PLUS_MINUS,
      })),
    };
  });
}

export function weeksBetween(from: Day, to: Day): number {
  return daysBetween(from, to) / DAYS_A_WEEK;
}

function oneADay(readings: readonly RadiusReading[]): RadiusReading[] {
  const byDay = new Map<Day, RadiusReading[]>();
  for (const reading of readings) {
    requirePositive(reading.radiusMm, 'radiusMm');
    byDay.set(reading.day, [...(byDay.get(reading.day) ?? []), reading]);
  }
  return [...byDay]
    .map(([day, sameDay]) => ({ day, ...meanReading(sameDay) }))
    .sort((a, b) => (a.day < b.day ? -1 : 1));
}

/** A mean counts as sure as the least sure in it: the pot's rim, which scales them all, is misread in all alike. */
function meanReading(readings: readonly Omit<RadiusReading, 'day'>[]): Omit<RadiusReading, 'day'> {
  const doubts = readings.map(({ plusMinusMm }) => plusMinusMm);
  return {
    radiusMm: readings.reduce((sum, { radiusMm }) => sum + radiusMm, 0) / readings.length,
    plusMinusMm: doubts.includes(null) ? null : Math.max(...(doubts as number[])),
  };
}
