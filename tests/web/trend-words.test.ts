import { describe, expect, it } from 'vitest';
import { addDays, day } from '../../core/day/day.ts';
import { trendOf } from '../../core/trend/trend.ts';
import { trendLine } from '../../web/src/trend/trend-line.ts';
import { trendWords } from '../../web/src/trend/trend-words.ts';

const FIRST = day('2026-09-06');
const weekly = (...values: number[]) =>
  values.map((value, week) => ({
    day: addDays(FIRST, week * 7),
    value,
    plusMinus: 1,
    sittingId: `sitting-${week}`,
  }));
const newest = (...values: number[]) => {
  const [segment] = trendOf(weekly(...values), []).segments;
  if (!segment) throw new TypeError('Expected a segment but received none');
  return segment;
};

describe('a trend in words', () => {
  it('rises or falls only where the test says so, with the rate and its interval', () => {
    expect(trendWords(newest(80, 81, 82.5, 83.5, 85), 'roundness', false)).toEqual({
      words: 'rising by 1.3 points a week, sure',
      interval: expect.stringMatching(/^between \d\.\d and \d\.\d points a week$/),
    });
    expect(trendWords(newest(85, 83, 82, 80, 79, 77), 'symmetry', false).words).toBe(
      'falling by 1.5 points a week, sure',
    );
  });

  it('is no change where it does not', () => {
    expect(trendWords(newest(80, 82, 79, 81, 80), 'roundness', false)).toEqual({
      words: 'no change',
      interval: null,
    });
  });

  it('is none with fewer than four photos, and says since when', () => {
    expect(trendWords(newest(80, 84, 88), 'roundness', false).words).toBe(
      'fewer than four photos: no trend yet',
    );
    expect(trendWords(newest(80, 84, 88), 'roundness', true).words).toBe(
      'fewer than four photos since the last stop: no trend yet',
    );
  });

  it('of the lean goes to a side, of the size grows', () => {
    expect(trendWords(newest(-8, -6, -4, -2, 0), 'lopsidedness', false).words).toBe(
      'moving to the right by 2.0 % a week, sure',
    );
    expect(trendWords(newest(200, 220, 240, 260, 280), 'size', false).words).toBe(
      'growing by 20 mm a week, sure',
    );
  });
});

describe('a trend line', () => {
  it('is not drawn where the test tells no direction', () => {
    expect(trendLine(newest(80, 82, 79, 81, 80), weekly(80, 82, 79, 81, 80))).toEqual([]);
    expect(trendLine(newest(80, 84, 88), weekly(80, 84, 88))).toEqual([]);
  });

  it('runs through the middle, and its interval is narrowest there', () => {
    const values = [80, 81, 83, 84, 87];
    const line = trendLine(newest(...values), weekly(...values));
    expect(line).toHaveLength(5);
    expect(line[2]).toMatchObject({ value: 83, low: 83, high: 83 });
    const room = line.map(({ low, high }) => high - low);
    expect(room[0]).toBeGreaterThan(room[1] as number);
    expect(room[4]).toBeGreaterThan(room[3] as number);
  });

  it('is not pulled off its place by a wild photo', () => {
    const values = [80, 81, 82, 83, 84, 85, 20];
    const segment = { ...newest(...values.slice(0, 6)), toDay: addDays(FIRST, 42) };
    const line = trendLine(segment, weekly(...values));
    expect(line.at(-1)?.value).toBeGreaterThan(80);
  });
});
