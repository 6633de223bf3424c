import { describe, expect, it } from 'vitest';
import type { Stroke } from '../../../core/canopy/stroke.ts';
import { cleared, redone, startHistory, undone, withStrokes } from '../../../web/src/mend/stroke-history.ts';

const stroke = (x: number): Stroke => ({ kind: 'keep', widthPx: 10, pointsPx: [[x, 0]] });
const [a, b, c] = [stroke(1), stroke(2), stroke(3)];

describe('the strokes of a photo', () => {
  it('are undone one step at a time and come again in their order', () => {
    const two = withStrokes(withStrokes(startHistory([a]), [b]), [c]);
    expect(two.strokes).toEqual([a, b, c]);
    expect(undone(two).strokes).toEqual([a, b]);
    expect(undone(undone(two)).strokes).toEqual([a]);
    expect(redone(undone(undone(two))).strokes).toEqual([a, b]);
    expect(redone(redone(undone(undone(two))))).toEqual(two);
  });

  it('never lose those the photo was opened with to undo', () => {
    expect(undone(startHistory([a])).strokes).toEqual([a]);
  });

  it('that answer for one zone go together', () => {
    const answered = withStrokes(startHistory([]), [a, b]);
    expect(undone(answered).strokes).toEqual([]);
  });

  it('can be cleared, and clearing can be undone', () => {
    const empty = cleared(withStrokes(startHistory([a]), [b]));
    expect(empty.strokes).toEqual([]);
    expect(undone(empty).strokes).toEqual([a, b]);
    expect(cleared(startHistory([]))).toEqual(startHistory([]));
  });

  it('forget what was undone once a new one is painted', () => {
    const other = withStrokes(undone(withStrokes(startHistory([]), [a])), [b]);
    expect(redone(other)).toBe(other);
  });
});
