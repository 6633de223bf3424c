import type { Day } from '../../core/day/day.ts';
import { dayInWords } from '../../core/day/day-in-words.ts';
import { type Trend, trendOf } from '../../core/trend/trend.ts';
import type { PlantPage, TrendPoint } from '../schemas/pages.ts';
import type { Stop } from '../schemas/sitting.ts';

/**
 * Which way each score goes, split at the stops. A sitting on which it was not measured is left out; so is one that was not
 * photographed from the stand's place, and one that the grower keeps out: each stretch says which.
 *
 * @param byGrower days of the sittings that the grower keeps out
 */
export function trendsOf(
  points: readonly TrendPoint[],
  stops: readonly Stop[],
  byGrower: readonly Day[],
): PlantPage['trends'] {
  const stopDays = stops.map(({ day }) => day);
  const leftOut = points.flatMap(({ day, leftOut: why }) => (why === null ? [] : [day]));
  const trend = (measure: 'roundness' | 'symmetry' | 'lopsidedness'): Trend => {
    const known = points.flatMap((point) => {
      const value = point[measure];
      return value === null ? [] : [{ day: point.day, value, plusMinus: point[`${measure}PlusMinus`] }];
    });
    return sayingLeftOut(trendOf(known, stopDays), { leftOut, byGrower, stopDays });
  };
  return {
    roundness: trend('roundness'),
    symmetry: trend('symmetry'),
    lopsidedness: trend('lopsidedness'),
  };
}

/** A trend whose stretches name the sittings that were left out of them, and why. */
function sayingLeftOut(
  { segments }: Trend,
  {
    leftOut,
    byGrower,
    stopDays,
  }: { leftOut: readonly Day[]; byGrower: readonly Day[]; stopDays: readonly Day[] },
): Trend {
  const stopsBefore = (one: Day) => stopDays.filter((stop) => stop < one).length;
  return {
    segments: segments.map((segment) => {
      const here = leftOut.filter((one) => stopsBefore(one) === stopsBefore(segment.fromDay));
      const elsewhere = here.filter((one) => !byGrower.includes(one));
      const why = [
        segment.why,
        ...said('Left out, because the camera stood elsewhere', elsewhere),
        ...said(
          'Left out by you',
          here.filter((one) => byGrower.includes(one)),
        ),
      ].join(' ');
      return { ...segment, why };
    }),
  };
}

function said(words: string, days: readonly Day[]): string[] {
  return days.length === 0 ? [] : [`${words}: ${days.map(dayInWords).join(', ')}.`];
}
