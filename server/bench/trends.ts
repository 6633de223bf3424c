import type { Day } from '../../core/day/day.ts';
import { dayInWords } from '../../core/day/day-in-words.ts';
import { type Trend, trendOf } from '../../core/trend/trend.ts';
import type { PlantPage, TrendPoint } from '../schemas/pages.ts';
import type { Stop } from '../schemas/sitting.ts';

/**
 * Which way each score goes, split at the stops. A sitting on which it was not measured is left out, and one that was not
 * photographed from the stand's place too: each stretch says which.
 */
export function trendsOf(points: readonly TrendPoint[], stops: readonly Stop[]): PlantPage['trends'] {
  const stopDays = stops.map(({ day }) => day);
  const leftOut = points.flatMap(({ day, leftOut: why }) => (why === null ? [] : [day]));
  const trend = (measure: 'roundness' | 'symmetry' | 'lopsidedness'): Trend => {
    const known = points.flatMap((point) => {
      const value = point[measure];
      return value === null ? [] : [{ day: point.day, value, plusMinus: point[`${measure}PlusMinus`] }];
    });
    return sayingLeftOut(trendOf(known, stopDays), leftOut, stopDays);
  };
  return {
    roundness: trend('roundness'),
    symmetry: trend('symmetry'),
    lopsidedness: trend('lopsidedness'),
  };
}

/** A trend whose stretches name the sittings that were left out of them. */
function sayingLeftOut({ segments }: Trend, leftOut: readonly Day[], stopDays: readonly Day[]): Trend {
  const stopsBefore = (one: Day) => stopDays.filter((stop) => stop < one).length;
  return {
    segments: segments.map((segment) => {
      const here = leftOut.filter((one) => stopsBefore(one) === stopsBefore(segment.fromDay));
      if (here.length === 0) return segment;
      const days = here.map(dayInWords).join(', ');
      return { ...segment, why: `${segment.why} Left out, because the camera stood elsewhere: ${days}.` };
    }),
  };
}
