import { describe, expect, it } from 'vitest';
import { NORMAL_95 } from '../../core/measures/plus-minus.ts';
import { seededNoise } from '../../core/measures/seeded-noise.ts';
import { coverageOf, repeatabilityOf } from './repeatability.ts';

/** Readings of normal noise with a stated plus-minus of 1.96 × `stated`. */
function readings(seed: number, count: number, spread: number, stated: number) {
  const noise = seededNoise(seed);
  return Array.from({ length: count }, () => ({
    value: 80 + spread * noise.normal(),
    plusMinus: NORMAL_95 * stated,
  }));
}

const coverage = (spread: number, stated: number) =>
  coverageOf(Array.from({ length: 300 }, (_, seed) => repeatabilityOf(readings(seed, 12, spread, stated))));

describe.each(['inside', 'unchanged'] as const)('the share of readings or pairs that is %s', (which) => {
  it('is 95 % when each reading states 1.96 standard deviations', () => {
    // 300 × 12 readings: one standard error of the share is about 0.4 points.
    expect(Math.abs(coverage(0.6, 0.6)[which] - 0.95)).toBeLessThan(0.012);
  });

  it('falls when too little is stated and rises when too much is', () => {
    // Normal distribution: P(|z| < 0.98) = 0.673, P(|z| < 3.92) = 0.9999.
    expect(Math.abs(coverage(0.6, 0.3)[which] - 0.673)).toBeLessThan(0.02);
    expect(coverage(0.6, 1.2)[which]).toBeGreaterThan(0.999);
  });
});

describe('repeatability', () => {
  it('is the standard deviation of the readings', () => {
    const { mean, spread, inside, pairs, unchanged } = repeatabilityOf([
      { value: 79, plusMinus: 1 },
      { value: 80, plusMinus: 1 },
      { value: 81, plusMinus: 1 },
    ]);
    expect(mean).toBe(80);
    expect(spread).toBe(1);
    // Off by 1, 0 and 1, and by √(3 ÷ 2) as much from a mean without them.
    expect(inside).toBe(1);
    // 1 lies inside √2, 2 does not.
    expect([pairs, unchanged]).toEqual([3, 2]);
  });

  it('cannot be told from one reading', () => {
    expect(() => repeatabilityOf([{ value: 79, plusMinus: 1 }])).toThrow(
      'Expected two readings or more but received 1',
    );
  });
});
