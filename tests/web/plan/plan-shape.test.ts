import { describe, expect, it } from 'vitest';
import type { PlanReach } from '../../../core/turned/measure-turned.ts';
import { azimuthAt, placeAt } from '../../../web/src/plan/azimuth.ts';
import {
  bandPath,
  inBallOf,
  leanShape,
  planExtent,
  reachAt,
  reachRuns,
} from '../../../web/src/plan/plan-shape.ts';

/** Reach all alike, measured at the azimuths named, every 5 degrees. */
function evenReach(measuredAt: readonly number[] = [], percent = 100): PlanReach[] {
  return Array.from({ length: 72 }, (_, k) => ({
    azimuthDeg: 5 * k,
    mm: 1.5 * percent,
    plusMinusMm: 6,
    percent,
    plusMinusPercent: 4,
    measured: measuredAt.includes(5 * k),
  }));
}

describe('the drawing seen from above', () => {
  it('has the mark at its foot, azimuth 90 at its right and 180 on top', () => {
    for (const [azimuth, x, y] of [
      [0, 0, 10],
      [90, 10, 0],
      [180, 0, -10],
      [270, -10, 0],
    ] as const) {
      expect(placeAt(azimuth, 10)[0]).toBeCloseTo(x);
      expect(placeAt(azimuth, 10)[1]).toBeCloseTo(y);
    }
  });

  it('gives a tap the azimuth that was drawn there', () => {
    for (const azimuth of [0, 17, 90, 200, 340]) expect(azimuthAt(placeAt(azimuth, 7))).toBeCloseTo(azimuth);
  });
});

describe('the line of the reach', () => {
  it('is cut where measuring begins and ends, and leaves no gap between its stretches', () => {
    const runs = reachRuns(evenReach([355, 0, 5, 90, 95]));
    expect(runs.map(({ measured }) => measured)).toEqual([false, true, false, true]);
    runs.forEach(({ places }, k) => {
      const next = runs[(k + 1) % runs.length];
      expect(places.at(-1)).toEqual(next?.places[0]);
    });
    expect(runs.at(-1)?.places).toHaveLength(3);
  });

  it('is one closed stretch when all of it is of one kind', () => {
    const [run, ...others] = reachRuns(evenReach());
    expect(others).toEqual([]);
    expect(run?.measured).toBe(false);
    expect(run?.places[0]).toEqual(run?.places.at(-1));
    expect(reachRuns([])).toEqual([]);
  });

  it('finds the sample next to an azimuth across the seam at 0', () => {
    expect(reachAt(evenReach(), 358)?.azimuthDeg).toBe(0);
    expect(reachAt(evenReach(), 123)?.azimuthDeg).toBe(125);
    expect(reachAt([], 0)).toBeNull();
  });

  it('has a band of two rings, and room for the farthest of all plans', () => {
    expect(bandPath(evenReach()).match(/Z/g)).toHaveLength(2);
    expect(planExtent(evenReach(), evenReach([], 130))).toBe(134);
    expect(planExtent([])).toBeCloseTo(112);
  });
});

describe('an earlier plan under today’s', () => {
  it('is drawn by its mm in today’s ball, so that growth shows', () => {
    const { reach, bySize } = inBallOf(evenReach([], 80), evenReach([], 100));
    expect(bySize).toBe(true);
    expect(reach[0]?.percent).toBeCloseTo(80);
    const smaller = evenReach().map((one) => ({ ...one, mm: 120 }));
    expect(inBallOf(smaller, evenReach()).reach[0]?.percent).toBeCloseTo(80);
  });

  it('keeps its own shares, and says so, when one of the two has no mm', () => {
    const bare = evenReach([], 90).map((one) => ({ ...one, mm: null, plusMinusMm: null }));
    expect(inBallOf(bare, evenReach())).toMatchObject({ bySize: false, reach: bare });
    expect(inBallOf(evenReach(), bare).bySize).toBe(false);
  });
});

describe('the arrow of the lean', () => {
  it('points to the heavy side, four times as long as the lean', () => {
    const { tip, along, across } = leanShape({
      percent: 6,
      azimuthDeg: 90,
      plusMinus: 1.5,
      plusMinusDeg: 10,
    });
    expect(tip[0]).toBeCloseTo(24);
    expect(tip[1]).toBeCloseTo(0);
    expect(along).toBeCloseTo(6);
    expect(across).toBeCloseTo(24 * Math.sin((10 * Math.PI) / 180));
  });

  it('has a round of doubt when its side is not known', () => {
    const { along, across } = leanShape({ percent: 0.5, azimuthDeg: 10, plusMinus: 1.5, plusMinusDeg: 180 });
    expect(across).toBe(along);
  });
});
