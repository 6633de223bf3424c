import type { Box, Point } from './points.ts';

export interface LabelSize {
  readonly width: number;
  readonly height: number;
  readonly fontPx: number;
}

/** Size of a label's plate in photo px. Width goes by 0.55 em a letter, true within a letter for these faces. */
export function labelSize(words: string, unitPx: number): LabelSize {
  const fontPx = 14.5 * unitPx;
  return { fontPx, height: 25 * unitPx, width: words.length * fontPx * 0.55 + 17 * unitPx };
}

/** The middle of a label moved just so far that its plate lies inside the window. */
export function clampInto(
  window: Box,
  [x, y]: Point,
  { width, height }: { width: number; height: number },
): Point {
  const hold = (value: number, start: number, room: number, size: number) =>
    Math.min(Math.max(value, start + size / 2), start + room - size / 2);
  return [hold(x, window.x, window.width, width * 1.06), hold(y, window.y, window.height, height * 1.2)];
}
