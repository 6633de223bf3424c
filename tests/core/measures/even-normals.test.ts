import { describe, expect, it } from 'vitest';
import { evenNormals } from '../../../core/measures/even-normals.ts';

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('evenly drawn normal values', () => {
  it('have a mean of 0 and a root mean square of 1 whatever their order', () => {
    for (const stride of [1, 11, 19]) {
      const values = evenNormals(24, stride);
      expect(mean(values)).toBeCloseTo(0, 10);
      expect(mean(values.map((value) => value ** 2))).toBeCloseTo(1, 10);
    }
  });

  it('are spread like a normal distribution', () => {
    // Within one standard deviation lie 68.27 % of a normal distribution, within two 95.45 %.
    const values = evenNormals(1001, 1);
    const within = (most: number) => mean(values.map((value) => (Math.abs(value) < most ? 1 : 0)));
    expect(within(1)).toBeCloseTo(0.6827, 2);
    expect(within(2)).toBeCloseTo(0.9545, 2);
  });

  it('hardly go together in the orders used', () => {
    const orders = [1, 11, 19].map((stride) => evenNormals(24, stride));
    for (const one of orders) {
      for (const other of orders) {
        if (one === other) continue;
        expect(Math.abs(mean(one.map((value, k) => value * (other[k] as number))))).toBeLessThan(0.13);
      }
    }
  });
});
