import { describe, expect, it } from 'vitest';
import type { PlanReach } from '../../../core/turned/measure-turned.ts';
import { listedCuts } from '../../../web/src/cut-list/listed-cut.ts';
import { planMarks } from '../../../web/src/cut-list/plan-marks.ts';
import { cutAt, listOf } from './listed.ts';

/** A ball of 150 mm whose canopy reaches 120 % all round. */
const reach = (withMm: boolean): PlanReach[] =>
  Array.from({ length: 72 }, (_, k) => ({
    azimuthDeg: 5 * k,
    mm: withMm ? 180 : null,
    plusMinusMm: withMm ? 6 : null,
    percent: 120,
    plusMinusPercent: 4,
    measured: true,
  }));

describe('cuts on the plan', () => {
  const cuts = listedCuts(
    listOf([
      // Azimuth 90 is at the right of the drawing, the mark at its foot.
      cutAt('right', { azimuthDeg: 90, tipMm: [0, 180, 60], cutMm: [0, 150, 50] }),
      cutAt('mark', { azimuthDeg: 0, tipMm: [75, 0, 200], cutMm: [60, 0, 160], chosen: false }),
      cutAt('photo'),
    ]),
  );

  it('lie where their stems are seen from above, a high stem nearer the middle', () => {
    const [right, mark, ...others] = planMarks(cuts, reach(true));
    expect(right).toMatchObject({ number: 1, left: false });
    expect(right?.tipPx[0]).toBeCloseTo(120);
    expect(right?.tipPx[1]).toBeCloseTo(0);
    expect(right?.cutPx[0]).toBeCloseTo(100);
    expect(mark?.tipPx[0]).toBeCloseTo(0);
    expect(mark?.tipPx[1]).toBeCloseTo(50);
    expect(mark?.left).toBe(true);
    expect(others).toEqual([]);
  });

  it('without millimetres stand at the reach of their side', () => {
    const [right] = planMarks(cuts, reach(false));
    expect(right?.tipPx[0]).toBeCloseTo(120);
    expect(right?.cutPx[0]).toBeCloseTo(105);
  });
});
