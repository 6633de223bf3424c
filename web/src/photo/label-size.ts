import type { Box, Point } from './points.ts';

export interface LabelSize {
  readonly width: number;
  readonly height: number;
  readonly fontPx: number;
  /** Room that the disc of a numbered label takes at its left; 0 without one. */
  readonly discRoomPx: number;
}

/** Size of a label's plate in photo px. Width goes by 0.55 em a letter, true within a letter for this face. */
export function labelSize(words: string, unitPx: number, numbered = false): LabelSize {
  const fontPx = 15 * unitPx;
  const discRoomPx = numbered ? 20 * unitPx : 0;
  return {
    fontPx,
    height: 26 * unitPx,
    width: words.length * fontPx * 0.55 + 18 * unitPx + discRoomPx,
    discRoomPx,
  };
}

/** Whether a plate in the middle of `at` lies on one of the points. */
export function plateCovers(at: Point, { width, height }: LabelSize, points: readonly Point[]): boolean {
  return points.some(([x, y]) => Math.abs(x - at[0]) < width / 2 && Math.abs(y - at[1]) < height / 2);
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
