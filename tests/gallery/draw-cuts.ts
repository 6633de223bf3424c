import type { PhotoReport } from '../../core/report.ts';
import { insideLabel, layOutCutMarks, numberedStems } from '../../web/src/photo/cut-marks.ts';
import { clampInto, labelSize, plateCovers } from '../../web/src/photo/label-size.ts';
import { cutWords, excessWords } from '../../web/src/photo/overlay-words.ts';
import type { Box, Point } from '../../web/src/photo/points.ts';
import { drawLabel } from './draw-label.ts';
import { layerGroup } from './layers.ts';
import { px } from './markup.ts';

/** Each long stem: from tip to cut mark, the bar where the tool goes, its number and how much; laid out as in the app. */
export function cutLayer({ ball, longStems }: PhotoReport, crop: Box, unitPx: number): string {
  if (ball === null || longStems.length === 0) return '';
  const marks = layOutCutMarks(numberedStems(longStems), {
    centrePx: ball.centrePx,
    radiusPx: ball.radiusPx,
    barPx: 13 * unitPx,
    labelPx: 26 * unitPx,
    gapPx: 60 * unitPx,
  });
  const drawn = marks.map((placed) => {
    const { mark, bar } = placed;
    const { tipPx, cutPx } = mark;
    const words = excessWords(mark.stem);
    const size = labelSize(words, unitPx, true);
    const outside = clampInto(crop, placed.label, size);
    const covered = plateCovers(outside, size, [tipPx, cutPx, ...bar]);
    const label = covered ? insideLabel(placed, ball.centrePx, size.width / 2 + 14 * unitPx) : outside;
    const leader = polyline(covered ? [tipPx, cutPx, label] : [cutPx, tipPx, label]);
    return (
      `<g><title>${cutWords(mark)}</title>` +
      twice('leader', leader) +
      twice('bar', polyline(bar)) +
      `${drawLabel(words, label, crop, unitPx, mark.number)}</g>`
    );
  });
  return layerGroup('cuts', 'Long stems with their cut marks.', drawn.join(''));
}

function polyline(points: readonly Point[]): string {
  return `M${points.map(([x, y]) => `${px(x)} ${px(y)}`).join('L')}`;
}

function twice(name: string, d: string): string {
  return `<path d="${d}" class="${name}Casing"/><path d="${d}" class="${name}"/>`;
}
