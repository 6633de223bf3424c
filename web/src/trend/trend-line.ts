import { type Day, daysBetween } from '../../../core/day/day.ts';
import type { TrendSegment } from '../../../core/trend/trend.ts';
import type { SeriesPoint } from './series.ts';

/** The trend line at one day, with the lines of the slowest and the fastest slope that the interval allows. */
export interface LinePoint {
  readonly day: Day;
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * The Theil–Sen line over its segment, drawn only where the test tells a direction. It runs through the middle day and
 * the middle value (Conover's rule, as core's own), and so do the two lines of the 95 % interval.
 */
export function trendLine(segment: TrendSegment, series: readonly SeriesPoint[]): LinePoint[] {
  const { slopePerWeek, interval95, direction, fromDay, toDay } = segment;
  if (direction === null || direction === 'no change' || slopePerWeek === null || !interval95) return [];
  const inside = series.filter(({ day }) => day >= fromDay && day <= toDay);
  if (inside.length === 0) return [];
  const middleWeek = middle(inside.map(({ day }) => daysBetween(fromDay, day) / 7));
  const middleValue = middle(inside.map(({ value }) => value));
  // The band of the interval has its waist in the middle, so that day is drawn, too.
  return [...new Set([fromDay, ...inside.map(({ day }) => day), toDay])].map((day) => {
    const weeks = daysBetween(fromDay, day) / 7 - middleWeek;
    const ends = interval95.map((slope) => middleValue + slope * weeks);
    return {
      day,
      value: middleValue + slopePerWeek * weeks,
      low: Math.min(...ends),
      high: Math.max(...ends),
    };
  });
}

function middle(values: readonly number[]): number {
  const ordered = values.toSorted((a, b) => a - b);
  const half = ordered.length / 2;
  return ((ordered[Math.ceil(half) - 1] as number) + (ordered[Math.floor(half)] as number)) / 2;
}
