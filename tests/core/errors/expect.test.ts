import { describe, expect, it } from 'vitest';
import {
  expectation,
  requireAtLeast,
  requireFinite,
  requirePositive,
  requirePositiveInteger,
} from '../../../core/errors/expect.ts';
import { seededNoise } from '../../../core/measures/seeded-noise.ts';
import { mirrorSymmetry } from '../../../core/measures/symmetry.ts';
import { scaleFromRim } from '../../../core/stand/scale.ts';
import { rim } from '../drawn-shapes.ts';

describe('a mistake in a call', () => {
  it('is told as what was expected, for what, and what came', () => {
    expect(expectation('a positive number', 'radiusPx', -3)).toBe(
      'Expected a positive number for radiusPx but received -3',
    );
    expect(expectation('a day YYYY-MM-DD', 'day', 'soon')).toBe(
      'Expected a day YYYY-MM-DD for day but received "soon"',
    );
    expect(expectation('a number', 'x', [1, 2, 3])).toBe(
      'Expected a number for x but received an array of 3',
    );
  });

  it('is never let through as NaN', () => {
    const checks = [
      () => requireFinite(Number.NaN, 'x'),
      () => requirePositive(Number.NaN, 'x'),
      () => requirePositiveInteger(Number.NaN, 'x'),
      () => requireAtLeast(Number.NaN, 3, 'x'),
    ];
    for (const check of checks) expect(check).toThrow(RangeError);
  });

  it('names the argument of the measure at fault', () => {
    const mask = { width: 1, height: 1, data: Uint8Array.of(1) };
    expect(() => mirrorSymmetry(mask, Number.NaN, null)).toThrow(
      new RangeError('Expected a finite number for axisXPx but received NaN'),
    );
    expect(() => scaleFromRim(rim(5, 5, 3), -130)).toThrow(
      new RangeError('Expected a positive number for rimMm but received -130'),
    );
  });
});

describe('the seeded noise', () => {
  it('is the same every time and looks normal', () => {
    const [first, again] = [seededNoise(1), seededNoise(1)];
    const values = Array.from({ length: 4000 }, () => first.normal());
    expect(Array.from({ length: 4000 }, () => again.normal())).toEqual(values);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
    // Four standard errors of 4000 normal values.
    expect(Math.abs(mean)).toBeLessThan(0.064);
    expect(Math.abs(variance - 1)).toBeLessThan(0.09);
  });
});
