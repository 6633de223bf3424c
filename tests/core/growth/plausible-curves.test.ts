import { describe, expect, it } from 'vitest';
import { expectedGrowth } from '../../../core/growth/expected-growth.ts';
import { radiusAt } from '../../../core/growth/growth-curve.ts';
import { mixtureQuantiles } from '../../../core/growth/mixture-quantile.ts';
import { plausibleCurves } from '../../../core/growth/plausible-curves.ts';

const readings = [62, 71, 77, 86, 88, 95].map((radiusMm, k) => ({ weeks: k + 1, radiusMm, sdMm: 2 }));
const EXPECTED = expectedGrowth(62);
const CHANCES = [0.05, 0.5, 0.95];

/**
 * The same by brute force: every start, growth and pace of an even net, the scatter integrated by hand.
 * Shares no code with the net under test but the curve itself.
 */
function finalRadiusByBruteForce(count: number): number[] {
  const { logGrowthMm, logWeeksToHalf } = EXPECTED;
  const heavy = (z: number) => -2.5 * Math.log(1 + (z * z) / 4);
  const found: { final: number; weight: number }[] = [];
  for (let i = 0; i < count; i++) {
    const z1 = -7 + (14 * (i + 0.5)) / count;
    const growthMm = Math.exp(logGrowthMm.mean + z1 * logGrowthMm.sd);
    for (let j = 0; j < count; j++) {
      const z2 = -7 + (14 * (j + 0.5)) / count;
      const weeksToHalf = Math.exp(logWeeksToHalf.mean + z2 * logWeeksToHalf.sd);
      for (let k = 0; k < count; k++) {
        const startRadiusMm = Math.exp(Math.log(15) + (Math.log(75 / 15) * (k + 0.5)) / count);
        const curve = {
          kind: 'logistic' as const,
          startRadiusMm,
          finalRadiusMm: startRadiusMm + growthMm,
          weeksToHalf,
        };
        let misfit = 0;
        for (const { weeks, radiusMm, sdMm } of readings)
          misfit += ((radiusMm - radiusAt(curve, weeks)) / sdMm) ** 2;
        // Two readings' worth of the stated plus-minus: the scatter's inverse gamma, integrated.
        const likelihood = -((2 + readings.length) / 2) * Math.log(2 + misfit);
        found.push({ final: curve.finalRadiusMm, weight: Math.exp(likelihood + heavy(z1) + heavy(z2) + 10) });
      }
    }
  }
  found.sort((a, b) => a.final - b.final);
  const all = found.reduce((sum, { weight }) => sum + weight, 0);
  return CHANCES.map((chance) => {
    let below = 0;
    return found.find(({ weight }) => {
      below += weight;
      return below >= chance * all;
    })?.final as number;
  });
}

describe('plausible curves', () => {
  it('say of the final radius what trying every curve says', () => {
    const { curves, freedom } = plausibleCurves('logistic', readings, EXPECTED);
    const parts = curves.map(({ weight, finalRadiusMm, finalScaleMm }) => ({
      weight,
      at: finalRadiusMm,
      scale: finalScaleMm,
    }));
    const quantiles = mixtureQuantiles(parts, freedom, CHANCES);
    const [low, middle, high] = finalRadiusByBruteForce(110);
    // The brute net is coarser: its steps are a hundredth of the range and more.
    expect(Math.abs((quantiles[0] as number) / (low as number) - 1)).toBeLessThan(0.01);
    expect(Math.abs((quantiles[1] as number) / (middle as number) - 1)).toBeLessThan(0.01);
    expect(Math.abs((quantiles[2] as number) / (high as number) - 1)).toBeLessThan(0.03);
  });

  it('share out a belief of 1', () => {
    const { curves } = plausibleCurves('gompertz', readings, EXPECTED);
    expect(curves.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 10);
  });

  it('hardly heed the guess when the readings are many and close', () => {
    const truth = { kind: 'logistic' as const, startRadiusMm: 60, finalRadiusMm: 140, weeksToHalf: 4 };
    const many = Array.from({ length: 16 }, (_, k) => ({
      weeks: k + 1,
      radiusMm: radiusAt(truth, k + 1) + 0.3 * Math.sin(11 * k),
      sdMm: 0.5,
    }));
    const meanFinal = (radiusGuessedFrom: number) => {
      const { curves } = plausibleCurves('logistic', many, expectedGrowth(radiusGuessedFrom));
      return curves.reduce((sum, { weight, finalRadiusMm }) => sum + weight * finalRadiusMm, 0);
    };
    expect(meanFinal(20)).toBeCloseTo(140, 0);
    expect(meanFinal(20)).toBeCloseTo(meanFinal(500), 0);
  });

  it('are as sure as the plus-minus with a single reading', () => {
    const { curves } = plausibleCurves('logistic', [{ weeks: 1, radiusMm: 80, sdMm: 1 }], expectedGrowth(80));
    for (const { form, finalRadiusMm } of curves) {
      const curve = {
        kind: form.kind,
        startRadiusMm: finalRadiusMm / form.growthFactor,
        finalRadiusMm,
        weeksToHalf: form.weeksToHalf,
      };
      expect(radiusAt(curve, 1)).toBeCloseTo(80, 6);
    }
  });
});
