import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, day, daysBetween, isDay } from '../../../core/day/day.ts';
import { dayInWords } from '../../../core/day/day-in-words.ts';

const anyDay = fc.integer({ min: -200_000, max: 200_000 }).map((days) => addDays(day('2000-01-01'), days));

describe('a calendar day', () => {
  it.each(['2024-02-29', '2000-02-29', '2026-12-31', '1900-02-28'])('%s is one', (text) => {
    expect(isDay(text)).toBe(true);
    expect(day(text)).toBe(text);
  });

  it.each([
    '2023-02-29',
    '1900-02-29',
    '2026-13-01',
    '2026-00-10',
    '2026-04-31',
    '2026-4-1',
    '',
    '2026-04-01T00:00',
  ])('“%s” is none', (text) => {
    expect(isDay(text)).toBe(false);
    expect(() => day(text)).toThrow(
      new RangeError(`Expected a day YYYY-MM-DD for day but received ${JSON.stringify(text)}`),
    );
  });

  it('comes back after as many days forward as back', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: -5000, max: 5000 }), (start, days) => {
        expect(addDays(addDays(start, days), -days)).toBe(start);
        expect(daysBetween(start, addDays(start, days))).toBe(days);
      }),
      { numRuns: 200, seed: 5 },
    );
  });

  it('sorts by its text', () => {
    fc.assert(
      fc.property(anyDay, anyDay, (a, b) => {
        expect(a < b).toBe(daysBetween(a, b) > 0);
      }),
      { numRuns: 200, seed: 6 },
    );
  });

  it('is counted by date across the change of the clocks', () => {
    // UK clocks go forward on 29 March 2026 (from memory): that day has 23 hours and is still one day.
    expect(daysBetween(day('2026-03-28'), day('2026-03-30'))).toBe(2);
  });

  it('is said in words', () => {
    expect(dayInWords('2026-03-08' as Day)).toBe('8 March 2026');
    expect(dayInWords('2024-12-28' as Day)).toBe('28 December 2024');
  });

  it('refuses part of a day', () => {
    expect(() => addDays(day('2026-03-08'), 0.5)).toThrow(
      new RangeError('Expected a whole number for days but received 0.5'),
    );
  });
});
