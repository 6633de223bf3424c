import { describe, expect, it } from 'vitest';
import {
  FORETOLD_95,
  foretellView,
  scoresAfter,
  type ViewToForetell,
} from '../../../core/cut/foretold-view.ts';
import { type ShapeScores, sittingScores } from '../../../core/cut/shape-scores.ts';
import { readSilhouette, type Silhouette } from '../../../core/silhouette/silhouette.ts';
import { drawMask } from '../drawn-shapes.ts';

const BEFORE: ShapeScores = {
  roundness: { score: 70, plusMinus: 2 },
  symmetry: { score: 99.9, plusMinus: 1 },
  lopsidedness: { percent: 3, plusMinus: 1, side: 'right' },
};

/** A disc with a bar to the right, in a mask of half the photo's size. */
const MASK = drawMask(200, 200, (x, y) => {
  const [dx, dy] = [x - 90, y - 100];
  return Math.hypot(dx, dy) <= 60 || (dx > 0 && dx <= 90 && Math.abs(dy) <= 8);
});

function view(before: ShapeScores = BEFORE, index = 0): ViewToForetell {
  return {
    index,
    before,
    silhouette: readSilhouette(MASK) as Silhouette,
    rim: { rimLeftPx: [70, 158], rimRightPx: [110, 158] },
    cuts: [{ id: 'bar', tipPx: [180, 100], cutPx: [150, 100], ball: { centrePx: [90, 100], radiusPx: 60 } }],
    toPhoto: ([x, y]) => [2 * x, 2 * y],
  };
}

describe('a view foretold', () => {
  it('adds the change to the report’s scores, never past 100, and doubts it by how well such changes are foretold', () => {
    const { after, isCut } = foretellView(view(), new Set(['bar']));
    expect(isCut).toBe(true);
    expect(after.roundness?.score).toBeGreaterThan(75);
    expect(after.roundness?.plusMinus).toBeCloseTo(Math.hypot(2, FORETOLD_95.view.roundness));
    expect(after.symmetry?.score).toBe(100);
    expect(after.lopsidedness?.percent).toBeLessThan(1);
    expect(after.lopsidedness?.side).toBe('even');
  });

  it('stays as it is without a cut, and marks the stem all the same, in px of the photo', () => {
    const { after, isCut, marks } = foretellView(view(), new Set());
    expect([after, isCut]).toEqual([BEFORE, false]);
    expect(marks).toEqual([{ id: 'bar', tipPx: [360, 200], cutPx: [300, 200] }]);
  });

  it('tells no score that its report does not', () => {
    const { after } = foretellView(view({ ...BEFORE, lopsidedness: null }), new Set(['bar']));
    expect(after.lopsidedness).toBeNull();
  });
});

describe('the scores of a sitting', () => {
  it('are one photo’s own, and of several the means without left and right', () => {
    const other: ShapeScores = { ...BEFORE, roundness: { score: 90, plusMinus: 4 } };
    expect(sittingScores([BEFORE])).toEqual(BEFORE);
    expect(sittingScores([BEFORE, other])).toMatchObject({
      roundness: { score: 80, plusMinus: 3 },
      lopsidedness: null,
    });
    expect(sittingScores([BEFORE, { ...other, roundness: null }]).roundness).toBeNull();
    expect(sittingScores([])).toEqual({ roundness: null, symmetry: null, lopsidedness: null });
  });

  it('after the cuts are foretold better than one view’s, whose errors cancel in part', () => {
    const chosen = new Set(['bar']);
    const views = [foretellView(view(), chosen), foretellView(view(BEFORE, 1), chosen)];
    const one = scoresAfter(views.slice(0, 1));
    const two = scoresAfter(views);
    expect(one).toEqual(views[0]?.after);
    expect(two.roundness?.score).toBeCloseTo(one.roundness?.score ?? 0);
    expect(two.roundness?.plusMinus).toBeCloseTo(Math.hypot(2, FORETOLD_95.sitting.roundness));
  });
});
