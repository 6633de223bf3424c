import { describe, expect, it } from 'vitest';
import { planOutline } from '../../../core/turned/plan-outline.ts';
import { reachAllRound } from '../../../core/turned/reach.ts';
import { supportLine } from '../../../core/turned/support-line.ts';

const FAR = { turnRad: 0, cos: 1, sin: 0, unitPerPx: 1, camera: null };
const AZIMUTHS = Array.from({ length: 72 }, (_, k) => 5 * k);

function linesAt(azimuths: readonly number[], distance: (azimuthDeg: number) => number) {
  return azimuths.map((azimuthDeg) => ({ azimuthDeg, distance: distance(azimuthDeg) }));
}

describe('the line at a silhouette’s end', () => {
  it('stands at turn + 90 on the right and turn − 90 on the left from far away', () => {
    expect(supportLine(FAR, 120, 'right')).toMatchObject({ azimuthDeg: 90, distance: 120 });
    expect(supportLine(FAR, -80, 'left')).toMatchObject({ azimuthDeg: 270, distance: 80 });
    expect(supportLine({ ...FAR, turnRad: Math.PI / 4 }, 120, 'right').azimuthDeg).toBeCloseTo(135, 9);
  });

  it('leans towards a near camera and touches the circle that it shows', () => {
    // A circle of radius 100 about the axis is seen from 1000 under the angle asin(0.1): x = 1000 tan(asin 0.1).
    const x = 1000 * Math.tan(Math.asin(0.1));
    const line = supportLine({ ...FAR, camera: { distanceMm: 1000, heightMm: 0 } }, x, 'right');
    expect(line.distance).toBeCloseTo(100, 9);
    expect(line.azimuthDeg).toBeCloseTo(90 - (Math.asin(0.1) * 180) / Math.PI, 9);
  });
});

describe('reach all round', () => {
  it('of a circle is its radius, least sure half-way between the measured azimuths', () => {
    const reach = reachAllRound(
      linesAt([0, 90, 180, 270], () => 150),
      { ballRadius: 150, endSd: 1, azimuthsDeg: AZIMUTHS },
    );
    for (const one of reach) expect(Math.abs(one.reach - 150)).toBeLessThan(1);
    const [at0, at45] = [reach[0], reach[9]];
    expect(at0?.measured).toBe(true);
    expect(at45?.measured).toBe(false);
    expect(at45?.plusMinus ?? 0).toBeGreaterThan(2 * (at0?.plusMinus ?? 0));
  });

  it('of a circle off the axis swings once a turn', () => {
    const truth = (azimuth: number) => 150 + 20 * Math.cos(((azimuth - 70) * Math.PI) / 180);
    const reach = reachAllRound(linesAt([0, 45, 90, 135, 180, 225, 270, 315], truth), {
      ballRadius: 150,
      endSd: 0.5,
      azimuthsDeg: AZIMUTHS,
    });
    for (const one of reach) expect(Math.abs(one.reach - truth(one.azimuthDeg))).toBeLessThan(2);
  });

  it('takes two readings of one azimuth as one, with less doubt', () => {
    const once = reachAllRound(
      linesAt([0, 90, 180, 270], () => 150),
      { ballRadius: 150, endSd: 4, azimuthsDeg: [0] },
    );
    const twice = reachAllRound(
      linesAt([0, 90, 180, 270, 0, 90, 180, 270], () => 150),
      { ballRadius: 150, endSd: 4, azimuthsDeg: [0] },
    );
    expect(twice[0]?.plusMinus ?? 9).toBeLessThan(once[0]?.plusMinus ?? 0);
  });

  it('never exceeds the corner of the lines next to it', () => {
    // At 45 the lines x = 100 and y = 20 meet at (100, 20): 84.9 at most.
    const lines = [
      { azimuthDeg: 0, distance: 100 },
      { azimuthDeg: 90, distance: 20 },
      { azimuthDeg: 180, distance: 100 },
      { azimuthDeg: 270, distance: 100 },
    ];
    const [at45] = reachAllRound(lines, { ballRadius: 100, endSd: 1, azimuthsDeg: [45] });
    expect(at45?.reach ?? 999).toBeLessThanOrEqual(120 / Math.SQRT2 + 1e-9);
  });
});

describe('the plan’s outer bound', () => {
  it('of four lines is a square', () => {
    const square = planOutline(linesAt([0, 90, 180, 270], () => 1)) ?? [];
    expect(square).toHaveLength(4);
    for (const [u, v] of square)
      expect([Math.abs(u), Math.abs(v)].map((x) => Math.round(x * 1e9) / 1e9)).toEqual([1, 1]);
  });

  it('is none when the lines do not close or contradict each other', () => {
    expect(planOutline(linesAt([0, 180], () => 1))).toBeNull();
    expect(planOutline(linesAt([0, 90, 180, 270], (azimuth) => (azimuth === 0 ? -3 : 1)))).toBeNull();
  });
});
