import type { Ball } from '../../../core/report.ts';
import { insideLabel, layOutCutMarks, type NumberedMark, type PlacedMark } from './cut-marks.ts';
import { freePlace, type Plate } from './free-place.ts';
import { clampInto, labelSize, plateCovers } from './label-size.ts';
import type { Box } from './points.ts';

/** A cut mark with the plate on which its number and words stand. */
export interface LabelledMark<Mark extends NumberedMark> extends PlacedMark<Mark>, Plate {
  /** The plate stands inside the ball, where the window left no room outside. */
  readonly isInside: boolean;
}

/** Places the labels of cut marks: outside the ball, inside where the window ends, none over another. */
export function placeCutLabels<Mark extends NumberedMark & { readonly words: string }>(
  marks: readonly Mark[],
  ball: Pick<Ball, 'centrePx' | 'radiusPx'>,
  crop: Box,
  unitPx: number,
): LabelledMark<Mark>[] {
  const placed = layOutCutMarks(marks, {
    centrePx: ball.centrePx,
    radiusPx: ball.radiusPx,
    barPx: 13 * unitPx,
    labelPx: 26 * unitPx,
    gapPx: 60 * unitPx,
  });
  const labelled: LabelledMark<Mark>[] = [];
  for (const one of placed) {
    const { tipPx, cutPx, words } = one.mark;
    const size = labelSize(words, unitPx, true);
    const outside = clampInto(crop, one.label, size);
    // Where the window leaves no room outside, the label goes inside the ball rather than over the mark.
    const isInside = plateCovers(outside, size, [tipPx, cutPx, ...one.bar]);
    const near = isInside ? insideLabel(one, ball.centrePx, size.width / 2 + 14 * unitPx) : outside;
    labelled.push({ ...one, size, isInside, at: freePlace({ at: near, size }, labelled) });
  }
  return labelled;
}
