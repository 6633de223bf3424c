import { day } from '../../../core/day/day.ts';
import type { GrowthNow } from '../../../server/schemas/condition.ts';
import type { TrendPoint } from '../../../server/schemas/pages.ts';
import { type SeriesPoint, seriesOf } from './series.ts';
import { isGrowth, type TrendMeasure } from './trend-measures.ts';

/** Any measure of the trend, oldest first: scores from the sittings' points, height, width and area from those of growth. */
export function trendSeries(
  trend: readonly TrendPoint[],
  growth: GrowthNow | null,
  measure: TrendMeasure,
): SeriesPoint[] {
  if (!isGrowth(measure)) return seriesOf(trend, measure);
  return (growth?.points ?? []).map((point) => {
    const value = point[GROWTH_FIELDS[measure]];
    // An area is a length squared: its share of doubt counts twice.
    const shares = measure === 'area' ? 2 : 1;
    return {
      day: day(point.day),
      sittingId: trend.find((one) => one.day === point.day)?.sittingId ?? point.day,
      value,
      plusMinus: point.plusMinusShare === null ? null : shares * point.plusMinusShare * value,
    };
  });
}

const GROWTH_FIELDS = { height: 'heightMm', width: 'widthMm', area: 'areaCm2' } as const;
