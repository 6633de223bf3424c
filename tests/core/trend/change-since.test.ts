import { describe, expect, it } from 'vitest';
import { changeSince } from '../../../core/trend/change-since.ts';

describe('a change from one sitting to the next', () => {
  it('is none inside the plus-minus of both', () => {
    expect(changeSince({ value: 80, plusMinus: 3 }, { value: 85, plusMinus: 4 })).toEqual({
      direction: 'none',
      by: 5,
      plusMinus: 5,
    });
  });

  it('has a direction just outside it', () => {
    expect(changeSince({ value: 80, plusMinus: 3 }, { value: 85.01, plusMinus: 4 }).direction).toBe('up');
    expect(changeSince({ value: 80, plusMinus: 3 }, { value: 74.99, plusMinus: 4 }).direction).toBe('down');
  });

  it('refuses a value that is no number', () => {
    expect(() => changeSince({ value: Number.NaN, plusMinus: 1 }, { value: 1, plusMinus: 1 })).toThrow(
      new RangeError('Expected a finite number for before.value but received NaN'),
    );
  });
});
