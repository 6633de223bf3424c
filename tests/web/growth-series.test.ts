import { describe, expect, it } from 'vitest';
import type { GrowthNow } from '../../server/schemas/condition.ts';
import type { TrendPoint } from '../../server/schemas/pages.ts';
import { trendSeries } from '../../web/src/trend/trend-series.ts';
import { valueWords } from '../../web/src/trend/trend-words.ts';

const growth = {
  points: [{ day: '2026-09-06', heightMm: 200, widthMm: 300, areaCm2: 450, plusMinusShare: 0.02 }],
} as unknown as GrowthNow;
const trend = [{ day: '2026-09-06', sittingId: 'the-sitting' }] as TrendPoint[];

describe('growth on the trend', () => {
  it('takes height and width with the plus-minus of a length, area with twice its share', () => {
    expect(trendSeries(trend, growth, 'height')).toEqual([
      { day: '2026-09-06', sittingId: 'the-sitting', value: 200, plusMinus: 4 },
    ]);
    expect(trendSeries(trend, growth, 'area')[0]).toMatchObject({ value: 450, plusMinus: 18 });
  });

  it('has none before a sitting with a scale', () => {
    expect(trendSeries(trend, null, 'width')).toEqual([]);
  });

  it('is told in mm, an area in cm²', () => {
    const [point] = trendSeries(trend, growth, 'area');
    if (!point) throw new TypeError('Expected a point');
    expect(valueWords(point, 'area')).toBe('450 ±18 cm²');
    expect(valueWords({ ...point, value: 200, plusMinus: null }, 'height')).toBe('200 mm');
  });
});
