import { type CurveChoice, chooseCurve } from './choose-curve.ts';
import { type ExpectedGrowth, type GrowthLesson, type LogBell, lessonOf } from './expected-growth.ts';
import { ratePerWeek } from './growth-curve.ts';
import { mixtureQuantiles } from './mixture-quantile.ts';
import { type CurveBelief, type PlausibleCurve, plausibleCurves } from './plausible-curves.ts';
import type { TimedRadius } from './radius-readings.ts';

export type Range = readonly [low: number, high: number];

/** All that the readings of one stretch and what was expected say of its growth. */
export interface GrowthBelief extends CurveBelief {
  readonly choice: CurveChoice;
  /** One standard deviation of a reading as the photos tell it, to be taken times a curve's scatter. */
  readonly readingSdMm: number;
}

/** Curves lighter than this are left out. */
const LEAST_WEIGHT = 1e-6;

/** Both kinds of curve, each with as much weight as the choice gives it. */
export function growthBelief(readings: readonly TimedRadius[], expected: ExpectedGrowth): GrowthBelief {
  const nets = {
    logistic: plausibleCurves('logistic', readings, expected),
    gompertz: plausibleCurves('gompertz', readings, expected),
  };
  const choice = chooseCurve(readings, expected, nets);
  const curves = [...nets.logistic.curves, ...nets.gompertz.curves].map((curve) => ({
    ...curve,
    weight: curve.weight * choice.weights[curve.form.kind],
  }));
  const sds = readings.map(({ sdMm }) => sdMm).sort((a, b) => a - b);
  return {
    curves: renormalised(curves.filter(({ weight }) => weight > LEAST_WEIGHT)),
    freedom: nets.logistic.freedom,
    choice,
    readingSdMm: sds[Math.floor(sds.length / 2)] as number,
  };
}

/** Ranges that hold the start radius, the final radius and the weeks to half of the growth with the given chance. */
export function curveRanges(belief: GrowthBelief, chance: number) {
  const { curves, freedom } = belief;
  const tails = [(1 - chance) / 2, (1 + chance) / 2];
  const sizeRange = (shareOf: (curve: PlausibleCurve) => number) =>
    mixtureQuantiles(
      curves.map((curve) => ({
        weight: curve.weight,
        at: curve.finalRadiusMm * shareOf(curve),
        scale: curve.finalScaleMm * shareOf(curve),
      })),
      freedom,
      tails,
    ) as unknown as Range;
  const ownKind = curves.filter(({ form }) => form.kind === belief.choice.chosen);
  return {
    startRadiusMm: sizeRange(({ form }) => 1 / form.growthFactor),
    finalRadiusMm: sizeRange(() => 1),
    weeksToHalf: weightedQuantiles(curves, ({ form }) => form.weeksToHalf, tails),
    /** Of the chosen kind: the rate constant means something else in the other. */
    ratePerWeek: weightedQuantiles(renormalised(ownKind), ({ form }) => ratePerWeek(form), tails),
  };
}

/** What the readings say by themselves, with what was expected before them taken out. */
export function growthLesson(belief: GrowthBelief, expected: ExpectedGrowth): GrowthLesson {
  const growthMm = ({ finalRadiusMm, form }: PlausibleCurve) => finalRadiusMm * (1 - 1 / form.growthFactor);
  return {
    logGrowthMm: lessonOf(
      expected.logGrowthMm,
      logBellOf(belief.curves, (curve) => Math.log(growthMm(curve))),
    ),
    logWeeksToHalf: lessonOf(
      expected.logWeeksToHalf,
      logBellOf(belief.curves, ({ form }) => Math.log(form.weeksToHalf)),
    ),
  };
}

function logBellOf(curves: readonly PlausibleCurve[], figureOf: (curve: PlausibleCurve) => number): LogBell {
  const mean = curves.reduce((sum, curve) => sum + curve.weight * figureOf(curve), 0);
  const variance = curves.reduce((sum, curve) => sum + curve.weight * (figureOf(curve) - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(variance) };
}

/** Values that the given shares of the weight lie below, between neighbours as their weights share it. */
function weightedQuantiles(
  curves: readonly PlausibleCurve[],
  figureOf: (curve: PlausibleCurve) => number,
  shares: readonly number[],
): Range {
  let below = 0;
  const steps = curves
    .map((curve) => ({ value: figureOf(curve), weight: curve.weight }))
    .sort((a, b) => a.value - b.value)
    .map(({ value, weight }) => {
      below += weight;
      return { value, below: below - weight / 2 };
    });
  return shares.map((share) => {
    const next = steps.findIndex((step) => step.below >= share);
    const [low, high] = [steps[next - 1], steps[next] ?? steps.at(-1)];
    if (low === undefined || high === undefined || high.below <= low.below)
      return (high as { value: number }).value;
    return low.value + ((share - low.below) / (high.below - low.below)) * (high.value - low.value);
  }) as unknown as Range;
}

function renormalised(curves: readonly PlausibleCurve[]): PlausibleCurve[] {
  const sum = curves.reduce((total, { weight }) => total + weight, 0);
  return curves.map((curve) => ({ ...curve, weight: curve.weight / sum }));
}
