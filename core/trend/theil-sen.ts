import { median } from 'simple-statistics';
import { requireAtLeast, requireFinite } from '../errors/expect.ts';
import { largestUsualS } from './kendall-distribution.ts';
import { MOST_EXACT, mannKendall } from './mann-kendall.ts';
import { normalPoint } from './normal-tail.ts';

/** A point of a series: when (in any unit) and how much. */
export interface SeriesPoint {
  readonly at: number;
  readonly value: number;
}

/** A line that wild values do not pull away. */
export interface TheilSenLine {
  /** Value's unit a unit of `at`. */
  readonly slope: number;
  /** Value at `at` = 0, by Conover's rule: median value − slope × median place. */
  readonly intercept: number;
  /** `null` when so few points bound the slope on neither side. */
  readonly interval: readonly [low: number, high: number] | null;
}

/**
 * Theil–Sen slope: the median of the slopes between all pairs of points, with its interval.
 *
 * @param points at least two, at places that differ, oldest first
 * @param confidence of the interval, above 0 and below 1
 * @returns slope, intercept and interval
 *
 * How: with N slopes in order and C the largest |S| of Kendall's that is still usual at that confidence, the ends are the
 * slopes of ranks (N − C) ÷ 2 and (N + C) ÷ 2 + 1. Up to ten points C is exact, so that 0 lies outside the interval exactly
 * when the Mann–Kendall test is significant (no ties); above, C = z × √Var S, and ranks between two slopes take the
 * share between them.
 *
 * Notes: two rules for the intercept are in use; the other one, the median of value − slope × place, gives another line
 * (in Sen's example 6 in place of 4).
 *
 * Reference: Theil (1950), A rank-invariant method; Sen (1968), Estimates of the regression coefficient based on Kendall's
 * tau; ranks after Gilbert (1987), 16.5; intercept after Conover (1980), Practical Nonparametric Statistics.
 *
 * Example: values 1, 3, 5, 99 at 0, 1, 2, 3 have the slope 2 between the first three pairs.
 */
export function theilSen(points: readonly SeriesPoint[], confidence = 0.95): TheilSenLine {
  requireAtLeast(points.length, 2, 'points.length');
  for (const { at, value } of points) {
    requireFinite(at, 'at');
    requireFinite(value, 'value');
  }
  const slopes = pairSlopes(points);
  requireAtLeast(slopes.length, 1, 'slopes.length');
  const slope = median(slopes);
  const values = points.map(({ value }) => value);
  return {
    slope,
    intercept: median(values) - slope * median(points.map(({ at }) => at)),
    interval: slopesAtRanks(slopes, usualS(values, confidence)),
  };
}

/** Slopes between all pairs of points that lie at different places, in order of size. */
export function pairSlopes(points: readonly SeriesPoint[]): number[] {
  const slopes: number[] = [];
  points.forEach((later, index) => {
    for (const earlier of points.slice(0, index)) {
      if (later.at !== earlier.at) slopes.push((later.value - earlier.value) / (later.at - earlier.at));
    }
  });
  return slopes.sort((a, b) => a - b);
}

/** The slopes of ranks (N − C) ÷ 2 and (N + C) ÷ 2 + 1, counted from 1; `null` when there are none. */
export function slopesAtRanks(
  slopes: readonly number[],
  criticalS: number | null,
): readonly [number, number] | null {
  if (criticalS === null) return null;
  const lowRank = (slopes.length - criticalS) / 2;
  if (lowRank < 1) return null;
  return [atRank(slopes, lowRank), atRank(slopes, slopes.length + 1 - lowRank)];
}

function usualS(values: readonly number[], confidence: number): number | null {
  const share = 1 - confidence;
  if (values.length <= MOST_EXACT) return largestUsualS(share, values.length);
  return normalPoint(share / 2) * Math.sqrt(mannKendall(values).variance);
}

function atRank(slopes: readonly number[], rank: number): number {
  const below = Math.floor(rank);
  const [low, high] = [slopes[below - 1] as number, (slopes[below] ?? slopes[below - 1]) as number];
  return low + (rank - below) * (high - low);
}
