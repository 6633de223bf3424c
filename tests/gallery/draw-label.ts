import { clampInto, labelSize } from '../../web/src/photo/label-size.ts';
import type { Box, Point } from '../../web/src/photo/points.ts';
import { escaped, px } from './markup.ts';

/** Words on a plate of their own inside the window; a `number` stands before them on a dark disc. */
export function drawLabel(
  words: string,
  at: Point,
  crop: Box,
  unitPx: number,
  number: number | null = null,
): string {
  const size = labelSize(words, unitPx, number !== null);
  const [x, y] = clampInto(crop, at, size);
  const [left, halfPx] = [x - size.width / 2, size.height / 2];
  const text = (atX: number, what: string) =>
    `<text x="${px(atX)}" y="${px(y)}" dy="0.34em" text-anchor="middle" font-size="${px(size.fontPx)}">${what}</text>`;
  const disc =
    number === null
      ? ''
      : `<g class="disc"><circle cx="${px(left + halfPx)}" cy="${px(y)}" r="${px(halfPx - unitPx)}"/>` +
        `${text(left + halfPx, String(number))}</g>`;
  return (
    `<g class="label" data-tone="${number === null ? 'plain' : 'cut'}">` +
    `<rect x="${px(left)}" y="${px(y - halfPx)}" width="${px(size.width)}" height="${px(size.height)}" rx="${px(halfPx)}"/>` +
    `${disc}${text(x + size.discRoomPx / 2, escaped(words))}</g>`
  );
}
