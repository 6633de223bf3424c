import type { SittingReports } from '../advice/plant-history.ts';
import type { Day } from '../day/day.ts';
import type { PhotoReport } from '../report.ts';
import { type TrendPoint, type TrendSegment, trendOf } from '../trend/trend.ts';

/** How fast a canopy grows since the last stop. */
export interface GrowthRates {
  /** mm a week. */
  readonly height: TrendSegment | null;
  /** mm a week. */
  readonly width: TrendSegment | null;
  /** Area as seen, cm² a week. */
  readonly area: TrendSegment | null;
}

/** One sitting's size; the mean of its views. */
export interface SizePoint {
  readonly day: Day;
  readonly heightMm: number;
  readonly widthMm: number;
  readonly areaCm2: number;
  /** 95 % repeatability of a length as a share of itself; `null` when not known. */
  readonly plusMinusShare: number | null;
}

const MM2_A_CM2 = 100;

/**
 * Size of the canopy at each sitting that has a scale.
 *
 * @param sittings in any order; what the grower left out as limp is left out here
 *
 * Notes: a length repeats as the ball's radius does; an area counts twice that share, being a length squared.
 */
export function sizePoints(sittings: readonly SittingReports[]): SizePoint[] {
  return sittings.flatMap(({ day, reports, leftOut }) => {
    if (leftOut != null) return [];
    const views = reports.flatMap((report) => {
      const size = report.notCompared === null ? canopySize(report) : null;
      return size === null ? [] : [size];
    });
    if (views.length === 0) return [];
    const mean = (measure: 'heightMm' | 'widthMm' | 'areaCm2') =>
      views.reduce((sum, view) => sum + view[measure], 0) / views.length;
    const shares = views.map(({ plusMinusShare }) => plusMinusShare);
    return [
      {
        day,
        heightMm: mean('heightMm'),
        widthMm: mean('widthMm'),
        areaCm2: mean('areaCm2'),
        plusMinusShare: shares.includes(null) ? null : Math.max(...(shares as number[])),
      },
    ];
  });
}

/** Size of the canopy in one photo, whether or not it may be compared; `null` without a scale. */
export function canopySize({
  canopy,
  scale,
  ball,
}: Pick<PhotoReport, 'canopy' | 'scale' | 'ball'>): Omit<SizePoint, 'day'> | null {
  if (canopy?.heightMm == null || canopy.widthMm === null || scale === null) return null;
  const isRepeatKnown = ball?.radiusMm != null && ball.radiusPlusMinusMm !== null;
  return {
    heightMm: canopy.heightMm,
    widthMm: canopy.widthMm,
    areaCm2: (canopy.areaPx * scale.mmPerPx ** 2) / MM2_A_CM2,
    plusMinusShare: isRepeatKnown ? (ball.radiusPlusMinusMm as number) / (ball.radiusMm as number) : null,
  };
}

/**
 * Weekly growth of height, width and area since the last stop, each with its 95 % interval.
 *
 * @param points in any order
 * @param stops days of stops
 * @returns the last stretch's Theil–Sen slopes (`trendOf`); `null` without a sitting
 *
 * Notes: a straight rate over the stretch; the curve that bends is `growthOf`, which the cut list rests on.
 *
 * Example: 200, 204, 209, 213, 216 mm from week to week: 4 mm a week, rising.
 */
export function growthRates(points: readonly SizePoint[], stops: readonly Day[]): GrowthRates {
  const rate = (value: (point: SizePoint) => number, power: number): TrendSegment | null => {
    const series: TrendPoint[] = points.map((point) => ({
      day: point.day,
      value: value(point),
      plusMinus: point.plusMinusShare === null ? null : power * point.plusMinusShare * value(point),
    }));
    return trendOf(series, stops).segments.at(-1) ?? null;
  };
  return {
    height: rate(({ heightMm }) => heightMm, 1),
    width: rate(({ widthMm }) => widthMm, 1),
    area: rate(({ areaCm2 }) => areaCm2, 2),
  };
}
