import { type Day, day, daysBetween } from '../../../core/day/day.ts';
import type { TrendPoint } from '../../../server/schemas/pages.ts';
import type { GrowthMeasure, TrendMeasure } from './trend-measures.ts';

/** One sitting's number on the trend. */
export interface SeriesPoint {
  readonly day: Day;
  readonly sittingId: string;
  readonly value: number;
  readonly plusMinus: number | null;
}

/** The sittings that know this measure, oldest first. Size is the ball's diameter in mm. */
export function seriesOf(
  trend: readonly TrendPoint[],
  measure: Exclude<TrendMeasure, GrowthMeasure>,
): SeriesPoint[] {
  return trend
    .flatMap((point) => {
      const value = pointValue(point, measure);
      if (value === null) return [];
      const plusMinus = measure === 'size' ? null : point[`${measure}PlusMinus`];
      return [{ day: day(point.day), sittingId: point.sittingId, value, plusMinus }];
    })
    .sort((a, b) => daysBetween(b.day, a.day));
}

/** Lowest and highest value with the plus-minus taken in; `null` for no points. */
export function spanOf(
  series: readonly Pick<SeriesPoint, 'value' | 'plusMinus'>[],
): { low: number; high: number } | null {
  if (series.length === 0) return null;
  return {
    low: Math.min(...series.map(({ value, plusMinus }) => value - (plusMinus ?? 0))),
    high: Math.max(...series.map(({ value, plusMinus }) => value + (plusMinus ?? 0))),
  };
}

function pointValue(point: TrendPoint, measure: Exclude<TrendMeasure, GrowthMeasure>): number | null {
  if (measure === 'size') return point.radiusMm === null ? null : point.radiusMm * 2;
  return point[measure];
}
