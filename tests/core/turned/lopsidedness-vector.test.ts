import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import {
  distinctDirections,
  fitLopsidedness,
  type ViewOffset,
} from '../../../core/turned/lopsidedness-vector.ts';

function offsets(percent: number, azimuthDeg: number, turns: readonly number[], plusMinus = 1): ViewOffset[] {
  return turns.map((turnDeg) => ({
    turnDeg,
    percent: percent * Math.sin(((azimuthDeg - turnDeg) * Math.PI) / 180),
    plusMinus,
  }));
}

function vectorOf(views: readonly ViewOffset[]) {
  const fit = fitLopsidedness(views);
  if (!fit.ok) throw new Error(fit.reason);
  return fit.vector;
}

describe('lopsidedness as a vector', () => {
  it('is found exactly from offsets that follow one sinusoid, from any two directions and more', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        fc.constantFrom([0, 90], [0, 45, 90, 135], [10, 75, 300], [0, 45, 90, 135, 180, 225, 270, 315]),
        (percent, azimuth, turns) => {
          const vector = vectorOf(offsets(percent, azimuth, turns));
          expect(vector.percent).toBeCloseTo(percent, 6);
          expect(Math.abs(turnBetween(vector.azimuthDeg, azimuth))).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it('turns with the plant when the views are relabelled by 45°', () => {
    const views = offsets(9, 120, [0, 45, 90, 135]).map((view, k) => ({
      ...view,
      percent: view.percent + ([0.4, -0.7, 0.2, 0.5][k] as number),
    }));
    const turned = vectorOf(views.map((view) => ({ ...view, turnDeg: view.turnDeg + 45 })));
    const plain = vectorOf(views);
    expect(turned.percent).toBeCloseTo(plain.percent, 9);
    expect(turnBetween(plain.azimuthDeg, turned.azimuthDeg)).toBeCloseTo(45, 9);
    expect(turned.plusMinusDeg).toBeCloseTo(plain.plusMinusDeg, 9);
  });

  it('reads a mark at the camera and a heavy right side as heavy at azimuth 90', () => {
    const vector = vectorOf([
      { turnDeg: 0, percent: 8, plusMinus: 1 },
      { turnDeg: 90, percent: 0, plusMinus: 1 },
    ]);
    expect(vector.azimuthDeg).toBeCloseTo(90, 9);
    expect(vector.even).toBe(false);
  });

  it('does not take mirror twins for further directions', () => {
    expect(distinctDirections([0, 90, 180, 270])).toBe(2);
    expect(distinctDirections([0, 45, 90, 135])).toBe(4);
    expect(distinctDirections([0, 45, 90, 135, 180, 225, 270, 315])).toBe(4);
    expect(distinctDirections([350, 5, 175])).toBe(1);
    expect(distinctDirections([])).toBe(0);
    // Precise readings: what is left is the plant's own shape, which twins share. Four directions halve that, twins do not.
    const two = vectorOf(offsets(10, 30, [0, 90], 0.1));
    const twins = vectorOf(offsets(10, 30, [0, 90, 180, 270], 0.1));
    const four = vectorOf(offsets(10, 30, [0, 45, 90, 135], 0.1));
    expect(twins.plusMinus).toBeGreaterThan(0.8 * two.plusMinus);
    expect(four.plusMinus).toBeLessThan(0.7 * two.plusMinus);
  });

  it('gives a side only from one direction, and says so', () => {
    const fit = fitLopsidedness(offsets(9, 90, [0, 180]));
    expect(fit.ok).toBe(false);
    if (!fit.ok) {
      expect(fit.reason).toBe('one-direction');
      expect(fit.hint).toContain('the right side is the heavier');
      expect(fit.hint).toContain('quarter turn');
    }
  });

  it('says that there is no view', () => {
    expect(fitLopsidedness([])).toMatchObject({ ok: false, reason: 'no-view' });
  });

  it('calls a plant even that leans by no more than its plus-minus and 2 %', () => {
    expect(vectorOf(offsets(2, 10, [0, 45, 90, 135])).even).toBe(true);
    expect(vectorOf(offsets(4, 10, [0, 45, 90, 135], 6)).even).toBe(true);
    expect(vectorOf(offsets(7, 10, [0, 45, 90, 135])).even).toBe(false);
  });

  it('grows unsure when the views disagree by more than they state', () => {
    const views = offsets(10, 30, [0, 45, 90, 135], 0.5);
    const apart = vectorOf(
      views.map((view, k) => ({ ...view, percent: view.percent + ([6, -6, 6, 6][k] as number) })),
    );
    expect(apart.disagreement).toBeGreaterThan(2);
    expect(apart.plusMinus).toBeGreaterThan(2 * vectorOf(views).plusMinus);
  });

  it('weighs a doubtful view less', () => {
    const views = [...offsets(10, 90, [0, 90]), { turnDeg: 0, percent: -10, plusMinus: 40 }];
    expect(vectorOf(views).percent).toBeGreaterThan(9);
  });
});
