import type { ExpectedGrowth } from './expected-growth.ts';
import { CURVE_KINDS, type CurveKind, type GrowthCurve, radiusAt } from './growth-curve.ts';
import { nonlinearLeastSquares } from './nonlinear-least-squares.ts';
import type { CurveBelief } from './plausible-curves.ts';
import type { TimedRadius } from './radius-readings.ts';

/** The curve of one kind that fits best. */
export interface FittedCurve {
  readonly curve: GrowthCurve;
  /** Sum of the readings' squared distances from it, each in its own standard deviations. */
  readonly misfit: number;
  /** Akaike's criterion for few readings; `null` with too few to tell curves apart by it. */
  readonly aicc: number | null;
}

/** Both kinds fitted, and how far each is believed. */
export interface CurveChoice {
  readonly chosen: CurveKind;
  readonly fits: Readonly<Record<CurveKind, FittedCurve>>;
  /** Akaike weights, together 1; a half each with too few readings. */
  readonly weights: Readonly<Record<CurveKind, number>>;
}

/** Start, final radius and pace of the curve, and the scatter about it. */
const FITTED_NUMBERS = 4;

/**
 * Fits a logistic and a Gompertz curve and chooses between them.
 *
 * @param readings of one stretch, at least one
 * @param expected growth, which counts in the fit as two readings of their own
 * @param beliefs net of each kind, where the search begins
 *
 * How: least squares on the readings in their standard deviations, with what was expected as two more residuals in its own. The lower
 * AICc is chosen; since both curves have as many numbers, that is the one the readings lie nearer to.
 *
 * Notes: with fewer than six readings AICc does not exist. Then the better fit is drawn and both are believed alike.
 *
 * Reference: Hurvich and Tsai (1989), Regression and time series model selection in small samples; Akaike weights: Burnham and Anderson
 * (2002), Model Selection and Multimodel Inference, 2nd ed., 2.9.
 */
export function chooseCurve(
  readings: readonly TimedRadius[],
  expected: ExpectedGrowth,
  beliefs: Readonly<Record<CurveKind, CurveBelief>>,
): CurveChoice {
  const [logistic, gompertz] = CURVE_KINDS.map((kind) => fitCurve(readings, expected, beliefs[kind])) as [
    FittedCurve,
    FittedCurve,
  ];
  const weight =
    logistic.aicc === null || gompertz.aicc === null
      ? 0.5
      : 1 / (1 + Math.exp((logistic.aicc - gompertz.aicc) / 2));
  return {
    chosen: logistic.misfit <= gompertz.misfit ? 'logistic' : 'gompertz',
    fits: { logistic, gompertz },
    weights: { logistic: weight, gompertz: 1 - weight },
  };
}

function fitCurve(
  readings: readonly TimedRadius[],
  { logGrowthMm, logWeeksToHalf }: ExpectedGrowth,
  { curves }: CurveBelief,
): FittedCurve {
  const likeliest = curves.reduce((best, curve) => (curve.weight > best.weight ? curve : best));
  const { form, finalRadiusMm, scatter } = likeliest;
  const curveOf = ([logStart, logGrowth, logWeeks]: readonly number[]): GrowthCurve => {
    const startRadiusMm = Math.exp(logStart as number);
    return {
      kind: form.kind,
      startRadiusMm,
      finalRadiusMm: startRadiusMm + Math.exp(logGrowth as number),
      weeksToHalf: Math.exp(logWeeks as number),
    };
  };
  const startRadiusMm = finalRadiusMm / form.growthFactor;
  const fit = nonlinearLeastSquares(
    (parameters) => [
      ...readings.map(
        ({ weeks, radiusMm, sdMm }) => (radiusMm - radiusAt(curveOf(parameters), weeks)) / sdMm,
      ),
      (scatter * ((parameters[1] as number) - logGrowthMm.mean)) / logGrowthMm.sd,
      (scatter * ((parameters[2] as number) - logWeeksToHalf.mean)) / logWeeksToHalf.sd,
    ],
    [startRadiusMm, finalRadiusMm - startRadiusMm, form.weeksToHalf].map(Math.log),
  );
  const curve = curveOf(fit.parameters);
  const misfit = readings.reduce(
    (sum, { weeks, radiusMm, sdMm }) => sum + ((radiusMm - radiusAt(curve, weeks)) / sdMm) ** 2,
    0,
  );
  return { curve, misfit, aicc: aicc(misfit, readings.length) };
}

function aicc(misfit: number, readings: number): number | null {
  const spare = readings - FITTED_NUMBERS - 1;
  if (spare < 1) return null;
  const likelihood = readings * Math.log(Math.max(misfit, Number.MIN_VALUE) / readings);
  return likelihood + 2 * FITTED_NUMBERS + (2 * FITTED_NUMBERS * (FITTED_NUMBERS + 1)) / spare;
}
