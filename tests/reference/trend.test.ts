import { linearRegression } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { chanceOfAtLeast } from '../../core/trend/kendall-distribution.ts';
import { mannKendall } from '../../core/trend/mann-kendall.ts';
import { normalPoint, normalTail } from '../../core/trend/normal-tail.ts';
import { pairSlopes, slopesAtRanks, theilSen } from '../../core/trend/theil-sen.ts';
import { EPA_SODIUM, EPA_SULFATE, MAXAU_DISCHARGE, MAXAU_SEDIMENT, NILE, NORRIS } from './trend-series.ts';

const series = (at: readonly number[], values: readonly number[]) =>
  values.map((value, index) => ({ at: at[index] as number, value }));
const yearly = (values: readonly number[]) => values.map((value, at) => ({ at, value }));

describe('the exact distribution of Kendall’s S', () => {
  // Source: Gilbert (1987), table A18, right-tail chances, as transcribed in a public source file; printed to three digits, or
  // two where small. The longer ones were computed by convolution with another program.
  it.each<[number, Record<number, number>, number]>([
    [4, { 0: 0.625, 2: 0.375, 4: 0.167, 6: 0.042 }, 3],
    [5, { 0: 0.592, 2: 0.408, 4: 0.242, 6: 0.117, 8: 0.042, 10: 0.0083 }, 3],
    [6, { 1: 0.5, 3: 0.36, 5: 0.235, 7: 0.136, 9: 0.068, 11: 0.028, 13: 0.0083, 15: 0.0014 }, 3],
    [8, { 0: 0.548, 10: 0.138, 12: 0.089, 14: 0.054, 16: 0.031, 18: 0.016, 20: 0.0071 }, 3],
    [4, { 6: 0.041667 }, 6],
    [5, { 10: 0.008333, 8: 0.041667, 6: 0.116667 }, 6],
    [6, { 15: 0.001389, 13: 0.008333, 11: 0.027778, 9: 0.068056, 7: 0.136111 }, 6],
    [
      7,
      { 21: 0.000198, 19: 0.001389, 17: 0.005357, 15: 0.015079, 13: 0.034524, 11: 0.068056, 9: 0.119444 },
      6,
    ],
    [
      8,
      {
        24: 0.000868,
        22: 0.002753,
        20: 0.007068,
        18: 0.015575,
        16: 0.030506,
        14: 0.05434,
        12: 0.089435,
        10: 0.13755,
      },
      6,
    ],
    [
      9,
      {
        26: 0.002943,
        24: 0.006333,
        22: 0.01237,
        20: 0.022308,
        18: 0.037588,
        16: 0.059719,
        14: 0.09009,
        12: 0.129759,
      },
      6,
    ],
    [
      10,
      { 27: 0.008333, 25: 0.014305, 23: 0.023311, 21: 0.036275, 19: 0.054157, 17: 0.077871, 15: 0.108187 },
      6,
    ],
  ])('is that of the printed table for %d values', (count, table, digits) => {
    const groups = new Array<number>(count).fill(1);
    for (const [s, chance] of Object.entries(table)) {
      // The printed digits may be cut or rounded: one unit of the last.
      expect(Math.abs(chanceOfAtLeast(Number(s), groups) - chance)).toBeLessThan(10 ** -digits);
    }
  });

  it('is, with ties, that of every order drawn up one by one', () => {
    // All 8! orders of each list, counted: no formula in common with the one tested.
    for (const values of [
      [1, 1, 2, 3, 3, 3, 4, 5],
      [1, 1, 1, 1, 2, 2, 2, 2],
      [1, 2, 3, 4, 5, 6, 7, 8],
      [7, 7, 7, 7, 7, 7, 7, 1],
    ]) {
      const counted = countedS(values);
      const groups = [...new Set(values)].map((value) => values.filter((other) => other === value).length);
      for (let s = -28; s <= 28; s++) {
        const share = [...counted].reduce((sum, [each, count]) => sum + (each >= s ? count : 0), 0) / 40320;
        expect(chanceOfAtLeast(s, groups)).toBeCloseTo(share, 12);
      }
    }
  });
});

/** S of every order of the values, and how often it comes. */
function countedS(values: readonly number[]): Map<number, number> {
  const counts = new Map<number, number>();
  const place = (placed: readonly number[], rest: readonly number[], s: number) => {
    if (rest.length === 0) {
      counts.set(s, (counts.get(s) ?? 0) + 1);
      return;
    }
    rest.forEach((value, index) => {
      const gained = placed.reduce((sum, earlier) => sum + Math.sign(value - earlier), 0);
      place([...placed, value], [...rest.slice(0, index), ...rest.slice(index + 1)], s + gained);
    });
  };
  place([], values, 0);
  return counts;
}

describe('the Mann–Kendall test', () => {
  // Source: Wisconsin Administrative Code, form with table A (chapter number from memory): S = −5.
  it('adds up the worked example of five readings', () => {
    expect(mannKendall([100, 50, 85, 75, 50]).s).toBe(-5);
  });

  // Source: EPA (2009) example 17-6; figures printed by R package EnvStats 3.1.0.
  it('has tau, z and p of the sulfate example', () => {
    const test = mannKendall(EPA_SULFATE.value);
    expect([test.s, test.variance, test.method]).toEqual([194, 1428, 'normal']);
    expect(test.tau).toBeCloseTo(0.7667984, 7);
    expect(test.z).toBeCloseTo(5.107322, 6);
    expect(test.p / 3.267574e-7).toBeCloseTo(1, 6);
  });

  // Source: R package trend 1.1.6, mk.test.
  it('has S, z and p of the Rhine at Maxau, which carries less silt and as much water', () => {
    const silt = mannKendall(MAXAU_SEDIMENT);
    expect([silt.s, silt.variance]).toEqual([-394, 10450]);
    expect(silt.tau).toBeCloseTo(-0.397979798, 9);
    expect(silt.z).toBeCloseTo(-3.8444517, 7);
    expect(silt.p).toBeCloseTo(0.0001208223, 9);
    const water = mannKendall(MAXAU_DISCHARGE);
    expect(water.s).toBe(-144);
    expect(water.z).toBeCloseTo(-1.3988717, 7);
    expect(water.p).toBeCloseTo(0.1618515, 6);
  });

  // Source: R package trend 1.1.6 on R's own Nile series.
  it('has S, variance and z of the Nile', () => {
    const test = mannKendall(NILE);
    expect(test.s).toBe(-1387);
    expect(test.variance).toBeCloseTo(112728.3333, 4);
    expect(test.z).toBeCloseTo(-4.1280665, 7);
  });
});

describe('the Theil–Sen slope', () => {
  const SEN = series([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78]);

  // Source: Sen (1968), JASA 63:1379, example: slope 4, 93 % interval (3.71, 4.38); as in SciPy's test_theilslopes.
  it('is 4 in Sen’s example, with the intercept 4 of Conover’s rule', () => {
    const line = theilSen(SEN, 0.93);
    expect(line.slope).toBeCloseTo(4, 12);
    expect(line.intercept).toBeCloseTo(4, 12);
  });

  it('has the printed interval of Sen’s example at his critical value 13', () => {
    const interval = slopesAtRanks(pairSlopes(SEN), 13);
    expect(interval?.[0]).toBeCloseTo(3.7142857, 7);
    expect(interval?.[1]).toBeCloseTo(4.375, 12);
  });

  it('has a narrower exact interval there: |S| ≤ 11 holds 93.1 % already, |S| ≤ 13 holds 97.0 %', () => {
    // The slopes of rank 5 and 17 of 21, from the list of all slopes.
    const interval = theilSen(SEN, 0.93).interval;
    expect(interval?.[0]).toBeCloseTo(3.75, 12);
    expect(interval?.[1]).toBeCloseTo(4 + 2 / 11, 12);
    const ones = new Array<number>(7).fill(1);
    expect(1 - 2 * chanceOfAtLeast(13, ones)).toBeCloseTo(0.931, 3);
    expect(1 - 2 * chanceOfAtLeast(15, ones)).toBeCloseTo(0.97, 3);
  });

  // Source: EPA (2009) example 17-6 as printed by R package EnvStats 3.1.0, which takes the share between two ranks.
  it('has slope, intercept and interval of the sulfate example', () => {
    const line = theilSen(series(EPA_SULFATE.year, EPA_SULFATE.value));
    expect(line.slope).toBeCloseTo(26.6666667, 6);
    expect(line.intercept).toBeCloseTo(-1909.3333333, 5);
    expect(line.interval?.[0]).toBeCloseTo(20, 9);
    expect(line.interval?.[1]).toBeCloseTo(35.71182, 5);
  });

  // Source: EPA (2009) example 17-7: 1.33 a year; the intercept by Conover's rule computed with another program.
  it('has slope and intercept of the sodium example', () => {
    const line = theilSen(series(EPA_SODIUM.year, EPA_SODIUM.value));
    expect(line.slope).toBeCloseTo(4 / 3, 7);
    expect(line.intercept).toBeCloseTo(-65.9667, 4);
    expect(mannKendall(EPA_SODIUM.value).s).toBe(25);
  });

  // Source: R package trend 1.1.6, sens.slope. It rounds the ranks outwards, so its ends may lie one slope further out.
  it.each([
    ['silt', MAXAU_SEDIMENT, -0.2876138824, -0.4196476782, -0.1519025875],
    ['water', MAXAU_DISCHARGE, -3.913032402, -9.892674211, 2.190572119],
    ['Nile', NILE, -2.6, -3.627906977, -1.428571429],
  ])('has the slope and interval of the %s', (_, values, slope, low, high) => {
    const line = theilSen(yearly(values));
    expect(line.slope / slope).toBeCloseTo(1, 8);
    const slopes = pairSlopes(yearly(values));
    const [lowest, highest] = line.interval ?? [Number.NaN, Number.NaN];
    expect(slopesBetween(slopes, low, lowest)).toBeLessThanOrEqual(1);
    expect(slopesBetween(slopes, high, highest)).toBeLessThanOrEqual(1);
  });

  // Source: NIST StRD Norris, certified: 1.00211681802045 and −0.262323073774029. Least squares is not used for the trend; on
  // clean data Theil–Sen must agree with it within its own interval.
  it('agrees with the certified line of Norris', () => {
    const least = linearRegression(NORRIS.x.map((x, index) => [x, NORRIS.y[index] as number]));
    expect(least.m).toBeCloseTo(1.00211681802045, 12);
    expect(least.b).toBeCloseTo(-0.262323073774029, 10);
    const line = theilSen(series(NORRIS.x, NORRIS.y));
    expect(line.interval?.[0]).toBeLessThan(1.00211681802045);
    expect(line.interval?.[1]).toBeGreaterThan(1.00211681802045);
    expect(Math.abs(line.slope - 1.00211681802045)).toBeLessThan(3 * 0.0004297968482);
  });
});

/** How many slopes lie strictly between two figures. */
function slopesBetween(slopes: readonly number[], one: number, other: number): number {
  const [low, high] = [Math.min(one, other) + 1e-8, Math.max(one, other) - 1e-8];
  return slopes.filter((slope) => slope > low && slope < high).length;
}

describe('the tail of the normal distribution', () => {
  // Source: Abramowitz and Stegun (1964), table 26.1 and 26.2 (from memory); digits from SciPy 1.10.1 norm.sf.
  it.each([
    [0, 0.5],
    [1, 0.15865525393145707],
    [1.959963984540054, 0.025],
    [2.9, 0.0018658133003840378],
    [3, 0.0013498980316300933],
    [5.1, 1.6982674071475966e-7],
    [8, 6.220960574271786e-16],
  ])('above %d is %d', (z, chance) => {
    expect(normalTail(z) / chance).toBeCloseTo(1, 6);
    expect(normalTail(-z)).toBeCloseTo(1 - chance, 12);
  });

  it('can be asked the other way round', () => {
    expect(normalPoint(0.025)).toBeCloseTo(1.959963984540054, 12);
    expect(normalPoint(0.5)).toBeCloseTo(0, 12);
  });
});
