import { describe, expect, it } from 'vitest';
import { mixtureQuantiles } from '../../../core/growth/mixture-quantile.ts';

describe('quantiles of a mixture', () => {
  it('are those of its one part', () => {
    const [low, middle, high] = mixtureQuantiles([{ weight: 1, at: 50, scale: 2 }], 10, [0.025, 0.5, 0.975]);
    expect(low).toBeCloseTo(50 - 2 * 2.228, 2);
    expect(middle).toBeCloseTo(50, 3);
    expect(high).toBeCloseTo(50 + 2 * 2.228, 2);
  });

  it('lie between two parts of equal weight', () => {
    const parts = [
      { weight: 0.5, at: 10, scale: 1 },
      { weight: 0.5, at: 30, scale: 1 },
    ];
    expect(mixtureQuantiles(parts, 8, [0.5])[0]).toBeCloseTo(20, 0);
    // A quarter of all lies below the middle of the first.
    expect(mixtureQuantiles(parts, 8, [0.25])[0]).toBeCloseTo(10, 1);
  });

  it('allow for a part that is known exactly', () => {
    const parts = [
      { weight: 0.9, at: 5, scale: 0 },
      { weight: 0.1, at: 9, scale: 0 },
    ];
    expect(mixtureQuantiles(parts, 3, [0.5])[0]).toBeCloseTo(5, 4);
    expect(mixtureQuantiles(parts, 3, [0.95])[0]).toBeCloseTo(9, 4);
  });

  it('need a part', () => {
    expect(() => mixtureQuantiles([], 3, [0.5])).toThrow('Expected at least 1 for parts but received 0');
  });
});
