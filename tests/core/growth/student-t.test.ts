import { describe, expect, it } from 'vitest';
import { studentBelow, studentPoint } from '../../../core/growth/student-t.ts';
import { normalTail } from '../../../core/trend/normal-tail.ts';

describe('Student’s t', () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.2, from memory.
  it.each([
    [1, 12.706, 0.975],
    [2, 4.303, 0.975],
    [3, 3.182, 0.975],
    [4, 2.776, 0.975],
    [5, 2.571, 0.975],
    [10, 2.228, 0.975],
    [10, 1.812, 0.95],
    [15, 2.131, 0.975],
    [30, 2.042, 0.975],
  ])('at %i degrees of freedom is below %f in a share of %f, as tables print', (freedom, t, below) => {
    expect(studentBelow(t, freedom)).toBeCloseTo(below, 4);
  });

  it('has the closed forms of one and two degrees', () => {
    for (const t of [-3, -0.4, 0, 1.7]) {
      expect(studentBelow(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 12);
      expect(studentBelow(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 12);
    }
  });

  it('comes near the normal distribution with many degrees', () => {
    expect(studentBelow(1.3, 4000)).toBeCloseTo(1 - normalTail(1.3), 4);
  });

  it('is even about nought', () => {
    expect(studentBelow(-2, 7)).toBeCloseTo(1 - studentBelow(2, 7), 12);
  });

  it('says what it wants', () => {
    expect(() => studentBelow(Number.NaN, 3)).toThrow('Expected a finite number for t but received NaN');
    expect(() => studentBelow(1, 2.5)).toThrow(
      'Expected a positive whole number for freedom but received 2.5',
    );
  });
});

describe('the point of Student’s t', () => {
  // scipy.stats.t.ppf of SciPy 1.10: `python3 -c "from scipy.stats import t; print(t.ppf(0.9, 9))"`.
  it.each([
    [0.9, 9, 1.3830287384],
    [0.9, 6, 1.4397557473],
    [0.95, 6, 1.9431802804],
    [0.05, 7, -1.8945786051],
    [0.975, 1, 12.7062047364],
    [0.99, 30, 2.4572615424],
    [0.6, 4, 0.2707222947],
  ])('below which a share of %f lies at %i degrees is %f, as in SciPy', (chance, freedom, point) => {
    expect(studentPoint(chance, freedom)).toBeCloseTo(point, 8);
  });

  it('is the way back from the share below', () => {
    for (const chance of [0.001, 0.3, 0.5, 0.77]) {
      expect(studentBelow(studentPoint(chance, 6), 6)).toBeCloseTo(chance, 12);
    }
  });

  it('says what it wants', () => {
    expect(() => studentPoint(1, 3)).toThrow(
      'Expected a chance above 0 and below 1 for chance but received 1',
    );
  });
});
