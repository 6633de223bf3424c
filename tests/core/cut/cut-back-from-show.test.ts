import { describe, expect, it } from 'vitest';
import { startRadiusFor } from '../../../core/cut/cut-back-from-show.ts';
import type { ExpectedGrowth } from '../../../core/growth/expected-growth.ts';
import { radiusAt } from '../../../core/growth/growth-curve.ts';

const expected = (growthMm: number, weeksToHalf: number, sd: number): ExpectedGrowth => ({
  logGrowthMm: { mean: Math.log(growthMm), sd },
  logWeeksToHalf: { mean: Math.log(weeksToHalf), sd },
  restsOn: 'plant',
});

describe('the ball to cut to for a wanted ball', () => {
  it('grows into the wanted ball', () => {
    const { radiusMm } = startRadiusFor(150, 9, expected(60, 4, 1e-9));
    for (const kind of ['logistic', 'gompertz'] as const) {
      const later = radiusAt(
        { kind, startRadiusMm: radiusMm, finalRadiusMm: radiusMm + 60, weeksToHalf: 4 },
        9,
      );
      // The two kinds of curve differ by a mm or two.
      expect(Math.abs(later - 150)).toBeLessThan(3);
    }
  });

  it('is the wanted ball less all growth when there is time enough', () => {
    expect(startRadiusFor(150, 300, expected(60, 4, 1e-9)).radiusMm).toBeCloseTo(90, 4);
  });

  it('is the wanted ball itself on the day', () => {
    const { radiusMm, growthMm } = startRadiusFor(150, 0, expected(60, 4, 0.5));
    expect(radiusMm).toBeCloseTo(150, 5);
    expect(growthMm).toBeCloseTo(0, 5);
  });

  it('is smaller the more weeks there are', () => {
    const radii = [2, 6, 12, 20].map((weeks) => startRadiusFor(150, weeks, expected(60, 4, 0.5)).radiusMm);
    expect(radii).toEqual([...radii].sort((a, b) => b - a));
  });

  it('has the range that the growth’s own range gives', () => {
    // With time enough the range is that of the growth alone: 60 mm × e^(± 1.645 × 0.2).
    const { range90Mm } = startRadiusFor(150, 1000, expected(60, 4, 0.2));
    expect(range90Mm[0]).toBeCloseTo(150 - 60 * Math.exp(1.645 * 0.2), 0);
    expect(range90Mm[1]).toBeCloseTo(150 - 60 * Math.exp(-1.645 * 0.2), 0);
  });

  it('is nothing where it would outgrow any cut', () => {
    expect(startRadiusFor(40, 300, expected(60, 4, 1e-9)).radiusMm).toBeCloseTo(0, 4);
  });
});
