import { addDays, day } from '../../../core/day/day.ts';
import { GUESS, SPREADS } from '../../../core/growth/expected-growth.ts';
import { type CurveKind, type GrowthCurve, radiusAt } from '../../../core/growth/growth-curve.ts';
import { type RadiusReading, weeksBetween } from '../../../core/growth/radius-readings.ts';
import { seededNoise } from '../../../core/measures/seeded-noise.ts';
import { normalTail } from '../../../core/trend/normal-tail.ts';

/** The day of the stop in every simulated season. */
export const STOP = day('2026-01-31');

export interface SeasonOptions {
  /** Sittings since the stop, about one a week. */
  readonly sittings: number;
  /** How many times as much readings scatter as their plus-minus says; `null`: no plus-minus is stated. */
  readonly noise: number | null;
  /** Plants of all sizes and paces, or drawn as the guess expects them. */
  readonly plants: 'all sorts' | 'as guessed';
  /** A curve that is neither of the two fitted: Richards' between them, or one that starts after a lag. */
  readonly truth?: 'fitted kinds' | 'richards' | 'lag';
}

export interface Season {
  readonly curve: GrowthCurve;
  readonly readings: RadiusReading[];
  /** True radius at weeks since the stop. */
  readonly radiusAt: (weeks: number) => number;
  /** A photo's reading of it. */
  readonly readingAt: (weeks: number) => number;
}

/** Uniform and normal numbers from one seed. */
export function chances(seed: number) {
  const { normal } = seededNoise(seed);
  return { normal, uniform: () => 1 - normalTail(normal()) };
}

/**
 * One plant from a stop on, photographed about once a week.
 *
 * Notes: all sorts: ball of 50–130 mm after the stop, growth of 20–200 mm (even in the logarithm), half of it in 2–10 weeks,
 * plus-minus 2–6 mm; a photo may be up to two days early or late and one in eight weeks is missed. Invented numbers.
 */
export function simulateSeason(seed: number, options: SeasonOptions): Season {
  const { normal, uniform } = chances(seed);
  const kind: CurveKind = seed % 2 === 0 ? 'logistic' : 'gompertz';
  const startRadiusMm = 50 + 80 * uniform();
  const [growthMm, weeksToHalf] =
    options.plants === 'all sorts'
      ? [20 * 10 ** uniform(), 2 + 8 * uniform()]
      : [
          GUESS.growthShare *
            startRadiusMm *
            Math.exp(Math.hypot(...Object.values(SPREADS.logGrowthMm)) * normal()),
          GUESS.weeksToHalf * Math.exp(Math.hypot(...Object.values(SPREADS.logWeeksToHalf)) * normal()),
        ];
  const curve: GrowthCurve = { kind, startRadiusMm, finalRadiusMm: startRadiusMm + growthMm, weeksToHalf };
  const plusMinusMm = 2 + 4 * uniform();
  const sdMm = ((options.noise ?? 1) * plusMinusMm) / 1.96;
  const trueRadius = truth(curve, options.truth ?? 'fitted kinds');
  const readingAt = (weeks: number) => trueRadius(weeks) + sdMm * normal();
  const readings: RadiusReading[] = [];
  for (let week = 1; readings.length < options.sittings; week++) {
    if (uniform() < 1 / 8) continue;
    const on = addDays(STOP, 7 * week + Math.floor(5 * uniform()) - 2);
    readings.push({
      day: on,
      radiusMm: Math.max(5, readingAt(weeksBetween(STOP, on))),
      plusMinusMm: options.noise === null ? null : plusMinusMm,
    });
  }
  return { curve, readings, radiusAt: trueRadius, readingAt };
}

function truth(curve: GrowthCurve, which: NonNullable<SeasonOptions['truth']>): (weeks: number) => number {
  switch (which) {
    case 'fitted kinds':
      return (weeks) => radiusAt(curve, weeks);
    case 'lag':
      // A fortnight for the side shoots to break before anything grows.
      return (weeks) => radiusAt(curve, Math.max(0, weeks - 2));
    case 'richards': {
      // Richards (1959) with exponent 3: bends later and harder than the logistic curve.
      const { startRadiusMm, finalRadiusMm, weeksToHalf } = curve;
      const excess = (finalRadiusMm / startRadiusMm) ** 3 - 1;
      const half = (startRadiusMm + finalRadiusMm) / 2;
      const rate = -Math.log(((finalRadiusMm / half) ** 3 - 1) / excess) / weeksToHalf;
      return (weeks) => finalRadiusMm * (1 + excess * Math.exp(-rate * weeks)) ** (-1 / 3);
    }
  }
}
