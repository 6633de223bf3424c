/** Saturating curves for the radius of the ball since a stop. */
export const CURVE_KINDS = ['logistic', 'gompertz'] as const;
export type CurveKind = (typeof CURVE_KINDS)[number];

/** How the radius of the ball grows from a stop on. */
export interface GrowthCurve {
  readonly kind: CurveKind;
  /** Right after the stop. */
  readonly startRadiusMm: number;
  /** What it tends to if it is let grow on and on. */
  readonly finalRadiusMm: number;
  /** When half of that growth is done; says the same in both curves, which their rate constants do not. */
  readonly weeksToHalf: number;
}

/** A curve's form without its size. */
export interface CurveForm {
  readonly kind: CurveKind;
  /** Final ÷ start radius, above 1. */
  readonly growthFactor: number;
  readonly weeksToHalf: number;
}

/** The form of a curve. */
export function formOf({ kind, startRadiusMm, finalRadiusMm, weeksToHalf }: GrowthCurve): CurveForm {
  return { kind, growthFactor: finalRadiusMm / startRadiusMm, weeksToHalf };
}

/**
 * Radius at a time as a share of the final radius.
 *
 * @param form kind of curve, final ÷ start radius (above 1), weeks until half of the growth is done
 * @param weeks since the stop
 * @returns above 0 and below 1: 1 ÷ growth factor at the stop, midway between that and 1 at `weeksToHalf`
 *
 * Reference: Verhulst (1838), R′ = k·R·(1 − R ÷ A); Gompertz (1825), R′ = k·R·ln(A ÷ R); both as in Ratkowsky (1983), Nonlinear
 * Regression Modeling, ch. 4. The rate constant k is told through the weeks to half of the growth.
 *
 * Example: a factor of 2 and 4 weeks give 0.5 at the stop and 0.75 after 4 weeks with either curve.
 */
export function shareOfFinal({ kind, growthFactor, weeksToHalf }: CurveForm, weeks: number): number {
  const halves = weeks / weeksToHalf;
  if (kind === 'logistic') {
    return 1 / (1 + (growthFactor - 1) * Math.exp(-halves * Math.log(1 + growthFactor)));
  }
  return Math.exp(-Math.log(growthFactor) * Math.exp(halves * Math.log(gompertzHalf(growthFactor))));
}

/** Radius at a time, mm. */
export function radiusAt(curve: GrowthCurve, weeks: number): number {
  return curve.finalRadiusMm * shareOfFinal(formOf(curve), weeks);
}

/** The curve's rate constant k, per week. */
export function ratePerWeek({ kind, growthFactor, weeksToHalf }: CurveForm): number {
  const rate = kind === 'logistic' ? Math.log(1 + growthFactor) : -Math.log(gompertzHalf(growthFactor));
  return rate / weeksToHalf;
}

/** e^(−k·weeksToHalf) of Gompertz's curve; tends to a half where there is hardly any growth. */
function gompertzHalf(growthFactor: number): number {
  return Math.log((2 * growthFactor) / (1 + growthFactor)) / Math.log(growthFactor);
}
