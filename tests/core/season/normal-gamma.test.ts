import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chanceBelow,
  meanInterval,
  type NormalGamma,
  nextPoint,
  updated,
} from '../../../core/season/normal-gamma.ts';

const BEFORE: NormalGamma = { mean: 60, count: 2, shape: 3, rate: 30 };

const anyBelief = fc.record({
  mean: fc.double({ min: 20, max: 200, noNaN: true }),
  count: fc.double({ min: 0.5, max: 10, noNaN: true }),
  shape: fc.integer({ min: 2, max: 20 }).map((freedom) => freedom / 2),
  rate: fc.double({ min: 1, max: 500, noNaN: true }),
});
const someDays = fc.array(fc.integer({ min: 20, max: 200 }), { minLength: 1, maxLength: 8 });

function expectAlike(one: NormalGamma, other: NormalGamma) {
  for (const part of ['mean', 'count', 'shape', 'rate'] as const) {
    expect(one[part]).toBeCloseTo(other[part], 6);
  }
}

describe('a belief about mean and scatter', () => {
  // Worked by hand from the formulas of Murphy (2007), section 3: n = 3, x̄ = 68, Σ(x − x̄)² = 8;
  // κ′ = 2 + 3, m′ = (2·60 + 3·68) ÷ 5, α′ = 3 + 3 ÷ 2, β′ = 30 + 8 ÷ 2 + 2·3·8² ÷ (2·5).
  it('is updated as in the worked example', () => {
    expectAlike(updated(BEFORE, [66, 70, 68]), { mean: 64.8, count: 5, shape: 4.5, rate: 72.4 });
  });

  // The same example on: scale² = 72.4 · 6 ÷ (4.5 · 5) = 19.307, t of 9 degrees at 0.9 is 1.383 (tables): 64.8 + 6.077.
  it('foresees the next value by Student’s t', () => {
    const learned = updated(BEFORE, [66, 70, 68]);
    expect(nextPoint(learned, 0.9)).toBeCloseTo(70.877, 3);
    expect(chanceBelow(learned, 70.877)).toBeCloseTo(0.9, 4);
  });

  // 72.4 ÷ (4.5 · 5) = 3.2178, its root 1.7938, t of 9 degrees at 0.95 is 1.833 (tables).
  it('has an interval for the mean', () => {
    const [low, high] = meanInterval(updated(BEFORE, [66, 70, 68]), 0.9);
    expect(low).toBeCloseTo(64.8 - 1.833 * 1.7938, 2);
    expect(high).toBeCloseTo(64.8 + 1.833 * 1.7938, 2);
  });

  it('stays as it is when nothing was seen', () => {
    expect(updated(BEFORE, [])).toEqual(BEFORE);
  });

  it('learns the same from all at once and from one after the other, in any order', () => {
    fc.assert(
      fc.property(anyBelief, someDays, (belief, days) => {
        const atOnce = updated(belief, days);
        expectAlike(
          atOnce,
          days.reduce((sofar, one) => updated(sofar, [one]), belief),
        );
        expectAlike(atOnce, updated(belief, days.toReversed()));
      }),
      { numRuns: 100, seed: 11 },
    );
  });

  it('is shifted and stretched with its values', () => {
    fc.assert(
      fc.property(anyBelief, someDays, (belief, days) => {
        const shifted = { ...belief, mean: 3 * belief.mean + 5, rate: 9 * belief.rate };
        const learned = updated(belief, days);
        const there = updated(
          shifted,
          days.map((one) => 3 * one + 5),
        );
        expect(nextPoint(there, 0.8)).toBeCloseTo(3 * nextPoint(learned, 0.8) + 5, 6);
      }),
      { numRuns: 50, seed: 12 },
    );
  });

  it('takes a value of half the weight twice for one', () => {
    expectAlike(updated(BEFORE, [70, 70], 0.5), updated(BEFORE, [70]));
  });

  it('says what it wants', () => {
    expect(() => updated(BEFORE, [Number.NaN])).toThrow(
      'Expected a finite number for value but received NaN',
    );
    expect(() => updated(BEFORE, [60], 0)).toThrow('Expected a positive number for weight but received 0');
  });
});
