import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, day } from '../../../core/day/day.ts';
import { type TrendPoint, trendOf } from '../../../core/trend/trend.ts';

/** One value a week from 1 March 2026 on, across the night of 29 March on which many clocks change. */
function weekly(values: readonly number[], plusMinus: number | null = 1): TrendPoint[] {
  return values.map((value, week) => ({ day: addDays(day('2026-03-01'), 7 * week), value, plusMinus }));
}

const only = (points: readonly TrendPoint[], stops: readonly Day[] = []) => {
  const { segments } = trendOf(points, stops);
  expect(segments).toHaveLength(1);
  return segments[0] as (typeof segments)[number];
};

describe('a trend', () => {
  it('rises when five sittings in a row do', () => {
    const trend = only(weekly([80, 82, 83, 85, 86]));
    expect(trend).toMatchObject({ n: 5, fromDay: '2026-03-01', toDay: '2026-03-29', direction: 'rising' });
    // The ten slopes a week in order lie about 1.5.
    expect(trend.slopePerWeek).toBeCloseTo(1.5, 12);
    // Both orders of five without a fall or without a rise, of 120.
    expect(trend.p).toBeCloseTo(2 / 120, 12);
    expect(trend.interval95?.[0]).toBeCloseTo(1, 12);
    expect(trend.interval95?.[1]).toBeCloseTo(2, 12);
    expect(trend.why).toBe('Chance alone would order 5 sittings as clearly about 1 time in 60.');
  });

  it('falls in the mirror', () => {
    const trend = only(weekly([86, 85, 83, 82, 80]));
    expect(trend.direction).toBe('falling');
    expect(trend.slopePerWeek).toBeCloseTo(-1.5, 12);
  });

  it('is no change when the test cannot tell it from chance, however steep it looks', () => {
    const trend = only(weekly([60, 90, 70, 95, 80, 99]));
    expect(trend.slopePerWeek).toBeGreaterThan(3);
    expect(trend.p).toBeGreaterThan(0.05);
    expect(trend.direction).toBe('no change');
  });

  it('is no change for four sittings that all rise, and says that one more may tell', () => {
    const trend = only(weekly([80, 82, 83, 85]));
    expect(trend.p).toBeCloseTo(2 / 24, 12);
    expect(trend.direction).toBe('no change');
    expect(trend.interval95).toBeNull();
    expect(trend.why).toBe(
      'Chance alone would order 4 sittings as clearly about 1 time in 12, so this is not told from chance. One more sitting may tell.',
    );
  });

  it('is none with fewer than four sittings, and says so', () => {
    const trend = only(weekly([80, 82, 83]));
    expect([trend.direction, trend.p, trend.interval95]).toEqual([null, null, null]);
    expect(trend.slopePerWeek).toBeCloseTo(1.5, 12);
    expect(trend.why).toBe('Three sittings: a trend needs at least four.');
    expect(only(weekly([80]))).toMatchObject({
      slopePerWeek: null,
      why: 'One sitting: a trend needs at least four.',
    });
    expect(trendOf([], [])).toEqual({ segments: [] });
  });

  it('is no change when every sitting reads the same', () => {
    expect(only(weekly([80, 80, 80, 80, 80, 80]))).toMatchObject({
      direction: 'no change',
      slopePerWeek: 0,
      p: 1,
    });
  });

  it('says when the whole change lies inside the plus-minus', () => {
    const trend = only(weekly([80, 80.2, 80.3, 80.5, 80.6], 2));
    expect(trend.direction).toBe('rising');
    expect(trend.why).toContain('inside the plus-minus of the first and the last sitting');
  });

  it('uses the normal test above ten sittings', () => {
    const values = [71, 70, 73, 74, 72, 76, 77, 75, 79, 78, 80];
    // 6 of 55 pairs fall, S = 43; Var = 11 · 10 · 27 ÷ 18 = 165; z = 42 ÷ √165 = 3.2697.
    expect(only(weekly(values)).p).toBeCloseTo(0.0010766, 6);
  });
});

describe('stops', () => {
  const points = weekly([80, 82, 83, 85, 86, 60, 63, 65, 68, 70]);

  it('part the trend, the sitting of the day itself being before the cut', () => {
    const { segments } = trendOf(points, [day('2026-03-29')]);
    expect(segments.map(({ n, direction, toDay }) => [n, direction, toDay])).toEqual([
      [5, 'rising', '2026-03-29'],
      [5, 'rising', '2026-05-03'],
    ]);
    // Without the stop the drop at the cut drowns both.
    expect(only(points).direction).toBe('no change');
  });

  it('that lie outside the sittings, or twice between two, part nothing more', () => {
    const stops = [day('2026-01-01'), day('2026-03-29'), day('2026-04-02'), day('2026-12-24')];
    expect(trendOf(points, stops).segments.map(({ n }) => n)).toEqual([5, 5]);
  });

  it('are named where too few sittings follow', () => {
    const { segments } = trendOf(points, [day('2026-04-27')]);
    expect(segments[1]?.why).toBe(
      'One sitting since the stop of 27 April 2026: a trend needs at least four.',
    );
  });
});

describe('days', () => {
  it('are counted by date, in any order and across a change of clocks', () => {
    const trend = only(weekly([80, 81, 82, 83, 84, 85, 86]));
    expect(trend.slopePerWeek).toBeCloseTo(1, 12);
    expect(trendOf(weekly([80, 81, 82, 83, 84, 85, 86]).reverse(), []).segments[0]).toEqual(trend);
  });

  it('with two values count as their mean', () => {
    const [first, ...rest] = weekly([80, 82, 84, 86]);
    const twice = [{ ...(first as TrendPoint), value: 79 }, { ...(first as TrendPoint), value: 81 }, ...rest];
    expect(only(twice)).toEqual(only(weekly([80, 82, 84, 86])));
  });

  it('with a value that is no number are refused', () => {
    expect(() => trendOf(weekly([80, Number.NaN]), [])).toThrow(
      new RangeError('Expected a finite number for value but received NaN'),
    );
  });
});

describe('whatever the values', () => {
  const values = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 4, maxLength: 14 });

  it('the interval leaves nought out exactly when the test tells a direction (ten sittings and fewer, no ties)', () => {
    fc.assert(
      fc.property(values, (drawn) => {
        const distinct = [...new Set(drawn)].slice(0, 10);
        if (distinct.length < 5) return;
        const { interval95, direction } = only(weekly(distinct));
        const [low, high] = interval95 ?? [Number.NaN, Number.NaN];
        expect(low > 0 || high < 0).toBe(direction !== 'no change');
      }),
      { numRuns: 300, seed: 11 },
    );
  });

  it('adding a constant changes nothing, and a factor scales the slope only', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 4, maxLength: 14 }), (drawn) => {
        const still = only(weekly(drawn));
        const moved = only(weekly(drawn.map((value) => 4 * value + 8)));
        expect([moved.p, moved.direction]).toEqual([still.p, still.direction]);
        expect(moved.slopePerWeek).toBeCloseTo(4 * (still.slopePerWeek ?? Number.NaN), 9);
      }),
      { numRuns: 100, seed: 12 },
    );
  });
});
