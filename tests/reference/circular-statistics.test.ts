import { describe, expect, it } from 'vitest';
import { circularSummary, degOf } from '../../core/turned/circular-statistics.ts';

const ZAR_26_2 = [45, 55, 81, 96, 110, 117, 132, 154];
const MARDIA_ROULETTE = [43, 45, 52, 61, 75, 88, 88, 279, 357];
const FISHER_TURTLES = [
  8, 9, 13, 13, 14, 18, 22, 27, 30, 34, 38, 38, 40, 44, 45, 47, 48, 48, 48, 48, 50, 53, 56, 57, 58, 58, 61,
  63, 64, 64, 64, 65, 65, 68, 70, 73, 78, 78, 78, 83, 83, 88, 88, 88, 90, 92, 92, 93, 95, 96, 98, 100, 103,
  106, 113, 118, 138, 153, 153, 155, 204, 215, 223, 226, 237, 238, 243, 244, 250, 251, 257, 268, 285, 319,
  343, 350,
];

describe('directions summed up, against printed examples', () => {
  // Source: Zar (2010), Biostatistical Analysis, examples 26.2 and 26.4: mean 99°, R 0.82522, s 34°, s0 36°.
  // Further digits: R 4.2.2, package circular 0.4-95.
  it('has mean, resultant and both deviations of Zar’s trees', () => {
    const trees = circularSummary(ZAR_26_2);
    expect(trees.meanDeg).toBeCloseTo(98.98775195, 7);
    expect(trees.resultant).toBeCloseTo(0.8252177448, 9);
    expect(Math.round(trees.angularDeviationDeg)).toBe(34);
    expect(Math.round(trees.circularSdDeg ?? Number.NaN)).toBe(36);
  });

  // Source: Zar (2010), examples 26.3 and 26.5 (grouped by 30°, n = 105): mean 162°, R 0.55064.
  it('takes grouped directions as weights', () => {
    const counts = [0, 6, 9, 13, 15, 22, 17, 12, 8, 3, 0, 0];
    const grouped = circularSummary(
      counts.map((_, k) => 15 + 30 * k),
      counts,
    );
    expect(grouped.meanDeg).toBeCloseTo(161.5650512, 6);
    expect(grouped.resultant).toBeCloseTo(0.5506350714, 9);
  });

  // Source: Mardia (1972), Statistics of Directional Data, example 1.1 (roulette); digits from R circular 0.4-95.
  it('has mean and resultant of Mardia’s roulette wheel', () => {
    const roulette = circularSummary(MARDIA_ROULETTE);
    expect(roulette.meanDeg).toBeCloseTo(51.05017711, 7);
    expect(roulette.resultant).toBeCloseTo(0.7109909989, 9);
  });

  // Source: Jammalamadaka and SenGupta (2001), Topics in Circular Statistics, p. 23: mean 48.63°, circular variance 0.1635635.
  it('has mean and variance of Jammalamadaka and SenGupta’s example', () => {
    const winds = circularSummary([51, 67, 40, 109, 31, 358]);
    expect(winds.meanDeg).toBeCloseTo(48.63, 2);
    expect(1 - winds.resultant).toBeCloseTo(0.1635635, 6);
  });

  // Source: Jammalamadaka and SenGupta (2001), p. 125, as in the tests of astropy.stats.circstats: R 0.766282.
  it('weighs directions', () => {
    const weighted = circularSummary([0, 3.6, 36, 72, 108, 169.2, 324], [12, 1, 6, 1, 2, 1, 1]);
    expect(weighted.resultant).toBeCloseTo(0.766282, 6);
  });

  // Source: Fisher (1993), Statistical Analysis of Circular Data, B.3 (76 turtles, Stephens 1969); digits from R circular 0.4-95.
  it('has mean and resultant of Fisher’s turtles', () => {
    const turtles = circularSummary(FISHER_TURTLES);
    expect(turtles.meanDeg).toBeCloseTo(64.171344, 5);
    expect(turtles.resultant).toBeCloseTo(0.4970921011, 9);
  });

  // Source: Fisher (1993), B.12; digits from R circular 0.4-95.
  it('has mean and resultant of Fisher’s B.12', () => {
    const directions = circularSummary([
      85, 135, 135, 140, 145, 150, 150, 150, 160, 285, 200, 210, 220, 225, 270,
    ]);
    expect(directions.meanDeg).toBeCloseTo(172.1185753, 6);
    expect(directions.resultant).toBeCloseTo(0.6373587321, 9);
  });

  // Source: data set `turtles` of R package circular 0.4-95.
  it('finds a mean across north', () => {
    const turtles = circularSummary([40, 303, 326, 285, 296, 314, 20, 308, 299, 296]);
    expect(turtles.meanDeg).toBeCloseTo(317.2353195, 6);
    expect(turtles.resultant).toBeCloseTo(0.8186496297, 9);
  });

  // Source: data of R CircStats r.test, as in the tests of astropy.stats.circstats: R 0.9202565.
  it('has the resultant of the r.test example', () => {
    expect(circularSummary([190.18, 175.48, 155.95, 217.83, 156.36]).resultant).toBeCloseTo(0.9202565, 6);
  });
});

describe('directions summed up, by reason', () => {
  it('has no mean where directions cancel out', () => {
    const cancelled = circularSummary([0, 90, 180, 270]);
    expect(cancelled.meanDeg).toBeNull();
    expect(cancelled.circularSdDeg).toBeNull();
    expect(cancelled.angularDeviationDeg).toBeCloseTo(degOf(Math.SQRT2), 6);
  });

  it('turns with its directions', () => {
    const turned = circularSummary(ZAR_26_2.map((deg) => deg + 300));
    expect(turned.meanDeg).toBeCloseTo(98.98775195 - 60, 7);
    expect(turned.resultant).toBeCloseTo(0.8252177448, 9);
  });

  it('words our own mistakes', () => {
    expect(() => circularSummary([])).toThrow('Expected at least 1 for directionsDeg.length but received 0');
    expect(() => circularSummary([10], [-1])).toThrow('Expected at least 0 for weight but received -1');
    expect(() => circularSummary([Number.NaN])).toThrow(
      'Expected a finite number for direction but received NaN',
    );
  });
});
