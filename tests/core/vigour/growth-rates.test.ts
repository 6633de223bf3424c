import { describe, expect, it } from 'vitest';
import { addDays, day } from '../../../core/day/day.ts';
import { growthRates, type SizePoint, sizePoints } from '../../../core/vigour/growth-rates.ts';

const FIRST = day('2026-03-01');
const point = (week: number, heightMm: number): SizePoint => ({
  day: addDays(FIRST, 7 * week),
  heightMm,
  widthMm: 1.2 * heightMm,
  areaCm2: (heightMm * heightMm) / 100,
  plusMinusShare: 0.02,
});

describe('growth a week', () => {
  it('is the slope of height, width and area', () => {
    const rates = growthRates(
      [200, 204, 208, 212, 216].map((mm, week) => point(week, mm)),
      [],
    );
    expect(rates.height?.slopePerWeek).toBeCloseTo(4, 9);
    expect(rates.width?.slopePerWeek).toBeCloseTo(4.8, 9);
    expect(rates.area?.slopePerWeek).toBeCloseTo(16.64, 1);
    expect(rates.height?.direction).toBe('rising');
  });

  it('begins anew after a stop and waits for a fourth sitting to tell a direction', () => {
    const points = [200, 210, 220, 230, 150, 152].map((mm, week) => point(week, mm));
    const rates = growthRates(points, [addDays(FIRST, 22)]);
    expect(rates.height).toMatchObject({ n: 2, direction: null });
    expect(rates.height?.slopePerWeek).toBeCloseTo(2, 9);
  });

  it('is not told without a sitting that has a scale', () => {
    expect(growthRates([], [])).toEqual({ height: null, width: null, area: null });
    expect(sizePoints([{ day: FIRST, reports: [] }])).toEqual([]);
  });
});
