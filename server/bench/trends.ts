import { type Trend, trendOf } from '../../core/trend/trend.ts';
import type { PlantPage, TrendPoint } from '../schemas/pages.ts';
import type { Stop } from '../schemas/sitting.ts';

/** Which way each score goes, split at the stops. A sitting on which it was not measured is left out. */
export function trendsOf(points: readonly TrendPoint[], stops: readonly Stop[]): PlantPage['trends'] {
  const stopDays = stops.map(({ day }) => day);
  const trend = (measure: 'roundness' | 'symmetry' | 'lopsidedness'): Trend =>
    trendOf(
      points.flatMap((point) => {
        const value = point[measure];
        return value === null ? [] : [{ day: point.day, value, plusMinus: point[`${measure}PlusMinus`] }];
      }),
      stopDays,
    );
  return {
    roundness: trend('roundness'),
    symmetry: trend('symmetry'),
    lopsidedness: trend('lopsidedness'),
  };
}
