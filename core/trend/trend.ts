import { type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { requireFinite } from '../errors/expect.ts';
import { type MannKendall, mannKendall } from './mann-kendall.ts';
import { theilSen } from './theil-sen.ts';

/** One sitting's value. */
export interface TrendPoint {
  readonly day: Day;
  readonly value: number;
  /** 95 % repeatability, in the value's unit; `null` when not known. */
  readonly plusMinus: number | null;
}

/** The trend of one stretch between stops, in the value's unit a week. */
export interface TrendSegment {
  readonly fromDay: Day;
  readonly toDay: Day;
  /** Sittings in it. */
  readonly n: number;
  /** Theil–Sen slope; `null` when there are fewer than two. */
  readonly slopePerWeek: number | null;
  /** 95 % interval of the slope; `null` for so few sittings that nothing bounds it. */
  readonly interval95: readonly [low: number, high: number] | null;
  /** Two-sided p of the Mann–Kendall test; `null` when there are too few to test. */
  readonly p: number | null;
  /** `null` when no trend can be told. */
  readonly direction: TrendDirection | null;
  /** Why the direction is what it is. */
  readonly why: string;
}

export type TrendDirection = 'rising' | 'falling' | 'no change';

export interface Trend {
  /** Oldest first: one for each stretch between stops in which there is a sitting. */
  readonly segments: readonly TrendSegment[];
}

/** With fewer sittings no trend is told. */
export const LEAST_SITTINGS = 4;
/** A direction is told when chance alone would seem as clear in less than one case of twenty. */
export const TREND_LEVEL = 0.05;

const DAYS_A_WEEK = 7;

/**
 * Which way a measure goes from sitting to sitting, parted at the stops.
 *
 * @param points in any order, one a day (several of one day count as their mean)
 * @param stops days on which the plant was cut; a sitting of that day shows the plant as it was before the cut
 * @returns one stretch between stops after the other: slope a week with its 95 % interval, p and direction
 *
 * How: the slope and its interval are Theil and Sen's, the direction is the Mann–Kendall test's at 5 %, two-sided. "No change"
 * says that the test cannot tell the stretch from chance, not that nothing moved.
 *
 * Notes: days are counted by date, so time zones and clock changes do not matter. Four sittings that all go one way would do so
 * by chance in one case of twelve: a direction needs five. The test asks for the order only and does not know each
 * value's plus-minus; where the whole change lies inside it, `why` says so.
 *
 * Reference: see `theilSen` and `mannKendall`.
 *
 * Example: 80, 82, 83, 85, 86 from week to week, no stop: rising, 1.5 a week, p = 0.017.
 */
export function trendOf(points: readonly TrendPoint[], stops: readonly Day[]): Trend {
  const ordered = onePointADay(points);
  const cuts = [...stops].sort();
  const stretches = new Map<number, TrendPoint[]>();
  for (const point of ordered) {
    const stopsBefore = cuts.filter((stop) => stop < point.day).length;
    stretches.set(stopsBefore, [...(stretches.get(stopsBefore) ?? []), point]);
  }
  return {
    segments: [...stretches].map(([stopsBefore, stretch]) =>
      segmentOf(stretch, cuts[stopsBefore - 1] ?? null),
    ),
  };
}

function segmentOf(points: readonly TrendPoint[], since: Day | null): TrendSegment {
  const first = points[0] as TrendPoint;
  const last = points.at(-1) as TrendPoint;
  const n = points.length;
  const facts = { fromDay: first.day, toDay: last.day, n };
  if (n < 2) {
    return {
      ...facts,
      slopePerWeek: null,
      interval95: null,
      p: null,
      direction: null,
      why: tooFew(n, since),
    };
  }
  const line = theilSen(
    points.map(({ day, value }) => ({ at: daysBetween(first.day, day) / DAYS_A_WEEK, value })),
  );
  const rate = { slopePerWeek: line.slope, interval95: line.interval };
  if (n < LEAST_SITTINGS) return { ...facts, ...rate, p: null, direction: null, why: tooFew(n, since) };

  const test = mannKendall(points.map(({ value }) => value));
  const direction = directionOf(test);
  return { ...facts, ...rate, p: test.p, direction, why: reasonOf(test, direction, points) };
}

function directionOf({ s, p }: MannKendall): TrendDirection {
  if (p >= TREND_LEVEL) return 'no change';
  return s > 0 ? 'rising' : 'falling';
}

function tooFew(n: number, since: Day | null): string {
  const sittings = n === 1 ? 'One sitting' : `${n === 2 ? 'Two' : 'Three'} sittings`;
  const when = since === null ? '' : ` since the stop of ${dayInWords(since)}`;
  return `${sittings}${when}: a trend needs at least four.`;
}

function reasonOf(test: MannKendall, direction: TrendDirection, points: readonly TrendPoint[]): string {
  const n = points.length;
  const chance = chanceInWords(test.p);
  if (direction !== 'no change') {
    const reason = `Chance alone would order ${n} sittings as clearly ${chance}.`;
    return isInsidePlusMinus(points)
      ? `${reason} The whole change still lies inside the plus-minus of the first and the last sitting.`
      : reason;
  }
  const pairs = (n * (n - 1)) / 2;
  const allOneWay = n === LEAST_SITTINGS && Math.abs(test.s) === pairs;
  const reason = `Chance alone would order ${n} sittings as clearly ${chance}, so this is not told from chance.`;
  return allOneWay ? `${reason} One more sitting may tell.` : reason;
}

/** How often chance alone gives this or more, as a grower would say it. */
function chanceInWords(p: number): string {
  if (p < 0.001) return 'less than 1 time in 1000';
  if (p >= 0.5) return 'more often than not';
  return `about 1 time in ${Math.round(1 / p)}`;
}

function isInsidePlusMinus(points: readonly TrendPoint[]): boolean {
  const first = points[0] as TrendPoint;
  const last = points.at(-1) as TrendPoint;
  if (first.plusMinus === null || last.plusMinus === null) return false;
  return Math.abs(last.value - first.value) <= Math.hypot(first.plusMinus, last.plusMinus);
}

/** Oldest first; several values of one day become their mean. */
function onePointADay(points: readonly TrendPoint[]): TrendPoint[] {
  const byDay = new Map<Day, TrendPoint[]>();
  for (const point of points) {
    requireFinite(point.value, 'value');
    byDay.set(point.day, [...(byDay.get(point.day) ?? []), point]);
  }
  return [...byDay.values()]
    .map((sameDay) => {
      const [only] = sameDay;
      if (sameDay.length === 1) return only as TrendPoint;
      const value = sameDay.reduce((sum, point) => sum + point.value, 0) / sameDay.length;
      // A mean is at least as sure as the least sure value in it.
      const doubts = sameDay.map(({ plusMinus }) => plusMinus);
      const plusMinus = doubts.includes(null) ? null : Math.max(...(doubts as number[]));
      return { day: (only as TrendPoint).day, value, plusMinus };
    })
    .sort((a, b) => (a.day < b.day ? -1 : 1));
}
