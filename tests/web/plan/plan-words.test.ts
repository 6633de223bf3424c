import { describe, expect, it } from 'vitest';
import type { PlanReach, TurnedReport } from '../../../core/turned/measure-turned.ts';
import { planHeard, sideTold } from '../../../web/src/plan/plan-words.ts';
import { TURNED_MEANINGS } from '../../../web/src/plan/turned-meanings.ts';
import { readTurned, TURNED_MEASURES } from '../../../web/src/plan/turned-readings.ts';

const SIDE: PlanReach = {
  azimuthDeg: 270,
  mm: 120,
  plusMinusMm: 5,
  percent: 80,
  plusMinusPercent: 3.3,
  measured: true,
};
const REPORT: TurnedReport = {
  plan: {
    directions: 4,
    reach: [SIDE, { ...SIDE, azimuthDeg: 90, mm: 165, percent: 110, plusMinusMm: 9, measured: false }],
    outlineMm: null,
    lopsidedness: {
      percent: 6.2,
      azimuthDeg: 92,
      plusMinus: 1.3,
      plusMinusDeg: 12,
      even: false,
      residuals: [],
      disagreement: 1,
    },
    hull: {
      volumeMl: 5300,
      bias: 1.0548,
      correctedVolumeMl: 5025,
      sphericity: 0.9,
      sphericityOfABall: 0.98,
      radiusMm: 150,
      centreMm: [3, 4, 100],
      onAxisRadiusMm: 152,
      outOfRoundMm: 14.2,
      outOfRoundPercent: 9.5,
    },
  },
  turn: null,
  faults: [],
  notes: [],
};

describe('a side that is asked for', () => {
  it('says how far it reaches, what is missing to the ball, and whether that was measured', () => {
    expect(sideTold(SIDE, null)).toBe(
      'The 9 o’clock side reaches 120 mm ±5. That is 30 mm short of the ball. A silhouette ends there, so it is measured.',
    );
  });

  it('fills the ball when it is within its plus-minus', () => {
    expect(sideTold({ ...SIDE, percent: 98, mm: 147 }, null)).toContain('fills the ball there, within');
    expect(sideTold({ ...SIDE, percent: 110, mm: 165, measured: false }, null)).toMatch(
      /15 mm beyond the ball\. No silhouette ends there/,
    );
  });

  it('is compared with an earlier sitting by the plus-minus of both', () => {
    const before = { ...SIDE, mm: 111 };
    expect(sideTold(SIDE, { reach: before, day: '4 Oct' })).toContain('Since 4 Oct: 9 mm more.');
    expect(sideTold(SIDE, { reach: { ...SIDE, mm: 114 }, day: '4 Oct' })).toContain('No change since 4 Oct.');
  });

  it('speaks in shares without a scale', () => {
    const bare = { ...SIDE, mm: null, plusMinusMm: null };
    expect(sideTold(bare, null)).toMatch(/reaches 80 % ±3.3 of the ball’s radius\. That is 20 % short/);
  });
});

describe('the plan that is heard', () => {
  it('names the sides of most and least reach and the lean', () => {
    expect(planHeard(REPORT)).toBe(
      'The plan seen from above, the mark at 6 o’clock. Most reach: the 3 o’clock side, 165 mm ±9. Least: the 9 o’clock side, 120 mm ±5. The canopy leans 6.2 % of the ball’s radius to the 3 o’clock side.',
    );
  });

  it('says what is not known', () => {
    const none = { ...REPORT, plan: { ...REPORT.plan, reach: [], lopsidedness: null } };
    expect(planHeard(none)).toBe('There is no reach all round. Where the canopy leans is not known.');
  });
});

describe('a number of a turned sitting', () => {
  it('is shown with its plus-minus and what belongs to it', () => {
    const words = Object.fromEntries(TURNED_MEASURES.map((one) => [one, readTurned(REPORT, one)]));
    expect(words.lean).toEqual({
      value: '6.2',
      plusMinus: 1.3,
      unit: '%',
      aside: 'heavy side 3 o’clock, ±12°',
    });
    expect(words.reach).toMatchObject({ value: '120–165', plusMinus: 9, unit: 'mm' });
    expect(words.ball?.aside).toMatch(/^its middle 5 mm beside the axis; held on the axis it is 304 mm$/);
    expect(words.volume).toMatchObject({ value: '5.0', unit: 'litres' });
    expect(words.volume?.aside).toBe('the hull itself reads 5.5 % more');
    expect(words.sphericity?.aside).toContain('0.98');
    expect(words.outOfRound).toMatchObject({ value: '14', unit: 'mm' });
  });

  it('is not known rather than nought', () => {
    const bare = { ...REPORT, plan: { ...REPORT.plan, reach: [], lopsidedness: null, hull: null } };
    for (const measure of TURNED_MEASURES) expect(readTurned(bare, measure).value).toBeNull();
  });

  it.each(Object.entries(TURNED_MEANINGS))(
    '%s says what it means, unit and range, where it leans, how far to trust it and its source',
    (_, meaning) => {
      for (const words of Object.values(meaning)) expect(words).toMatch(/^\S.{7,}[.…]$/s);
      expect(meaning.range).toMatch(/unit|%|mm|ml/);
      expect(meaning.source).toMatch(/\d{4}|own/);
    },
  );
});
