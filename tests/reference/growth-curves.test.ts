import { describe, expect, it } from 'vitest';
import { chooseCurve } from '../../core/growth/choose-curve.ts';
import type { ExpectedGrowth } from '../../core/growth/expected-growth.ts';
import { formOf, ratePerWeek } from '../../core/growth/growth-curve.ts';
import { plausibleCurves } from '../../core/growth/plausible-curves.ts';
import { REFERENCE_SETS, type ReferenceSet } from './nist-nonlinear/reference-sets.ts';

/** Nothing is expected beforehand: bell curves so wide that they do not count. */
const NOTHING: ExpectedGrowth = {
  logGrowthMm: { mean: 4, sd: 1e4 },
  logWeeksToHalf: { mean: 3, sd: 3 },
  restsOn: 'guess',
};

function choiceOn(name: string) {
  const { observations } = REFERENCE_SETS.find((set) => set.name === name) as ReferenceSet;
  const readings = observations.map(({ x, y }) => ({ weeks: x, radiusMm: y, sdMm: 1 }));
  return chooseCurve(readings, NOTHING, {
    logistic: plausibleCurves('logistic', readings, NOTHING),
    gompertz: plausibleCurves('gompertz', readings, NOTHING),
  });
}

// Pasture yield against growing time (Ratkowsky 1983), certified as NIST set Rat42: y = b1 / (1 + exp(b2 − b3·x)).
describe('a logistic curve through the pasture yields of Ratkowsky', () => {
  const { logistic, gompertz } = choiceOn('Rat42').fits;

  it('has the certified final size, start and rate', () => {
    const [b1, b2, b3] = (REFERENCE_SETS.find(({ name }) => name === 'Rat42') as ReferenceSet).parameters as [
      number,
      number,
      number,
    ];
    // What is left of the bell curve of the pace moves the fourth digit.
    expect(logistic.curve.finalRadiusMm / b1).toBeCloseTo(1, 3);
    expect(logistic.curve.startRadiusMm / (b1 / (1 + Math.exp(b2)))).toBeCloseTo(1, 3);
    expect(ratePerWeek(formOf(logistic.curve)) / b3).toBeCloseTo(1, 3);
  });

  it('leaves the certified sum of squares', () => {
    const { residualSumOfSquares } = REFERENCE_SETS.find(({ name }) => name === 'Rat42') as ReferenceSet;
    expect(logistic.misfit / residualSumOfSquares).toBeCloseTo(1, 4);
  });

  it('lies nearer than a Gompertz curve, as Ratkowsky found', () => {
    // Ratkowsky (1983), ch. 4, from memory: of his models for these data Gompertz has about twice the residual variance.
    expect(gompertz.misfit).toBeGreaterThan(1.3 * logistic.misfit);
    expect(choiceOn('Rat42').chosen).toBe('logistic');
    expect(choiceOn('Rat42').weights.logistic).toBeGreaterThan(0.9);
  });

  it('is weighed by Akaike’s criterion for few readings', () => {
    // n·ln(RSS/n) + 2k + 2k(k+1)/(n−k−1) with n = 9, k = 4 (Hurvich and Tsai 1989), from the certified sum.
    const byHand = 9 * Math.log(8.0565229338 / 9) + 8 + 40 / 4;
    expect(logistic.aicc).toBeCloseTo(byHand, 3);
  });
});
