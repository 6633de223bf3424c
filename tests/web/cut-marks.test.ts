import { describe, expect, it } from 'vitest';
import type { LongStem, PhotoReport } from '../../core/report.ts';
import {
  barAcross,
  insideLabel,
  layOutCutMarks,
  numberedStems,
  spread,
} from '../../web/src/photo/cut-marks.ts';
import { clampInto, labelSize, plateCovers } from '../../web/src/photo/label-size.ts';
import { cutWords } from '../../web/src/photo/overlay-words.ts';
import { weakSideOf } from '../../web/src/photo/weak-side.ts';

const CENTRE = [500, 500] as const;

/** A stem that leaves a ball of radius 200 px at the given hour. */
function stemAt(clock: number, excessPx = 40): LongStem {
  const turn = (clock / 12) * 2 * Math.PI;
  const at = (reach: number) => [500 + reach * Math.sin(turn), 500 - reach * Math.cos(turn)] as const;
  return {
    tipPx: at(200 + excessPx),
    cutPx: at(200),
    excessPx,
    excessMm: excessPx / 2,
    clock,
    kind: 'shoot',
  };
}

const LAYOUT = { centrePx: CENTRE, radiusPx: 200, barPx: 10, labelPx: 20, gapPx: 60 };

describe('cut marks', () => {
  it('are numbered clockwise from 6 as the cut list is, whatever order they come in', () => {
    const marks = numberedStems([stemAt(9), stemAt(2), stemAt(5), stemAt(7)]);
    expect(marks.map(({ number, stem }) => [number, stem.clock])).toEqual([
      [1, 7],
      [2, 9],
      [3, 2],
      [4, 5],
    ]);
  });

  it('keep their numbers when they are laid out round the ball', () => {
    const marks = layOutCutMarks(numberedStems([stemAt(9), stemAt(2), stemAt(5)]), LAYOUT);
    expect(marks.map(({ mark }) => mark.number)).toEqual([2, 3, 1]);
  });

  it('lie square across the stem with the cut in their middle', () => {
    const [from, to] = barAcross([10, 0], [0, 0], 5);
    expect(from).toEqual([0, 5]);
    expect(to).toEqual([0, -5]);
  });

  it('keep their labels apart when the stems crowd', () => {
    const stems = [stemAt(2, 40), stemAt(2.05, 42), stemAt(2.1, 44)];
    const marks = layOutCutMarks(numberedStems(stems), LAYOUT);
    for (let i = 1; i < marks.length; i++) {
      const [a, b] = [marks[i - 1]?.label ?? CENTRE, marks[i]?.label ?? CENTRE];
      // A chord is a little shorter than its arc, hence the hundredth.
      expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeGreaterThan(60 * 0.99);
    }
  });

  it('leave labels that have room where they are', () => {
    expect(spread([0, 1, 2], 0.5)).toEqual([0, 1, 2]);
  });

  it('take their label inside the ball, clear of the cut, when the photo ends outside', () => {
    const [mark] = layOutCutMarks(numberedStems([stemAt(3)]), LAYOUT);
    if (!mark) throw new TypeError('Expected a cut mark but received none');
    const size = labelSize('20 mm', 1, true);
    const edge = { x: 200, y: 200, width: 560, height: 600 };
    const points = [mark.mark.tipPx, mark.mark.cutPx, ...mark.bar];
    expect(plateCovers(clampInto(edge, mark.label, size), size, points)).toBe(true);
    const inside = insideLabel(mark, CENTRE, size.width / 2 + 14);
    expect(plateCovers(inside, size, points)).toBe(false);
  });

  it('say where, how much and that a cut cannot be undone', () => {
    const [mark] = numberedStems([stemAt(2)]);
    if (!mark) throw new TypeError('Expected a cut mark but received none');
    expect(cutWords(mark)).toBe(
      'Cut mark 1: at 2 o’clock a long stem stands 20 mm outside the ball. Look for a leaf joint at the mark. A cut cannot be undone.',
    );
  });
});

describe('the weak side', () => {
  const leaning = (side: 'left' | 'right' | 'even', rimY: number | null) =>
    ({
      ball: { centrePx: [500, 500], radiusPx: 200 },
      lopsidedness: { percent: side === 'left' ? -10 : 10, plusMinus: 2, side },
      axis: rimY === null ? null : { xPx: 520, rimLeftPx: [450, rimY], rimRightPx: [590, rimY] },
    }) as unknown as PhotoReport;

  it('is the half the canopy does not lean to, from the axis to the ball’s edge, above the rim', () => {
    expect(weakSideOf(leaning('right', 640))).toMatchObject({
      side: 'left',
      half: { x: 300, y: 300, width: 220, height: 340 },
    });
    expect(weakSideOf(leaning('left', null))).toMatchObject({
      side: 'right',
      half: { x: 500, y: 300, width: 200, height: 400 },
    });
  });

  it('is not named when the plant stands even', () => {
    expect(weakSideOf(leaning('even', 640))).toBeNull();
  });
});
