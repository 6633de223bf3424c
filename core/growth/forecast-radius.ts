import type { Day } from '../day/day.ts';
import { expectation } from '../errors/expect.ts';
import type { Growth } from './growth.ts';
import type { Range } from './growth-belief.ts';
import { shareOfFinal } from './growth-curve.ts';
import { mixtureQuantiles } from './mixture-quantile.ts';
import { weeksBetween } from './radius-readings.ts';

/** How large the ball will be on a day if it is not cut before. */
export interface RadiusForecast {
  readonly day: Day;
  /** As likely more as less. */
  readonly radiusMm: number;
  /** 90 %: where the curve itself will run. */
  readonly curveRange90Mm: Range;
  /** 90 %: what a photo taken that day would read, its own scatter with it. */
  readonly readingRange90Mm: Range;
}

const TAILS = [0.05, 0.5, 0.95];

/**
 * Size of the ball on a day to come.
 *
 * @param growth since the last stop
 * @param day not before the stretch began
 * @returns median radius and 90 % ranges, mm
 *
 * How: every plausible curve is read off at that day; the ranges allow for both kinds of curve, for how well their numbers are known and for
 * what readings scatter.
 */
export function forecastRadius(growth: Growth, day: Day): RadiusForecast {
  const weeks = weeksBetween(growth.since, day);
  if (weeks < 0) throw new RangeError(expectation(`a day from ${growth.since} on`, 'day', day));
  const { curves, freedom, readingSdMm } = growth.belief;
  const shares = curves.map(({ form }) => shareOfFinal(form, weeks));
  const quantiles = (sdMm: number) =>
    mixtureQuantiles(
      curves.map(({ weight, finalRadiusMm, finalScaleMm, scatter }, k) => ({
        weight,
        at: finalRadiusMm * (shares[k] as number),
        scale: Math.hypot(finalScaleMm * (shares[k] as number), scatter * sdMm),
      })),
      freedom,
      TAILS,
    ) as [number, number, number];
  const [low, radiusMm, high] = quantiles(0);
  const [lowReading, , highReading] = quantiles(readingSdMm);
  return {
    day,
    radiusMm,
    curveRange90Mm: [low, high],
    readingRange90Mm: [lowReading, highReading],
  };
}
