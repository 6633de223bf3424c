import type { Stroke } from '../../../core/canopy/stroke.ts';
import type { Point } from '../photo/points.ts';

/** Widths as shares of the photo's longer side, each a quarter wider than the one before. */
const WIDTH_SHARES = Array.from({ length: 15 }, (_, step) => 0.025 * 1.25 ** (step - 8));

export const WIDTH_STEPS = WIDTH_SHARES.length;

const MOST_POINTS = 2000;

/** 2.5 % of the longer side: about a leaf. */
export const FIRST_WIDTH_STEP = 8;

export function widthOfStep(step: number, longerSidePx: number): number {
  return (WIDTH_SHARES[heldStep(step)] as number) * longerSidePx;
}

export function heldStep(step: number): number {
  return Math.min(Math.max(Math.round(step), 0), WIDTH_STEPS - 1);
}

/** Adds a point unless it lies so near the last one that the line would look the same. */
export function drawnOn(points: readonly Point[], next: Point, widthPx: number): readonly Point[] {
  const last = points.at(-1);
  if (last && Math.hypot(next[0] - last[0], next[1] - last[1]) < Math.max(widthPx / 8, 1)) return points;
  return [...points, next];
}

/**
 * A finished line as strokes, to a tenth of a px: finer than any hand, and short to send. One line is one
 * stroke, unless it has more points than the server takes in one; then the next begins where the last ended.
 */
export function finishedStrokes(
  kind: Stroke['kind'],
  widthPx: number,
  points: readonly Point[],
): readonly Stroke[] {
  const tenth = (value: number) => Math.round(value * 10) / 10;
  const pointsPx = points.map(([x, y]): Point => [tenth(x), tenth(y)]);
  const strokes: Stroke[] = [];
  for (let from = 0; from === 0 || from < pointsPx.length - 1; from += MOST_POINTS - 1) {
    strokes.push({ kind, widthPx: tenth(widthPx), pointsPx: pointsPx.slice(from, from + MOST_POINTS) });
  }
  return strokes;
}

/** Whether the point lies under the stroke. */
export function isUnder([x, y]: Point, { widthPx, pointsPx }: Stroke): boolean {
  return pointsPx.some((to, index) => {
    const from = pointsPx[Math.max(index - 1, 0)] ?? to;
    return distanceToSegment([x, y], from, to) <= widthPx / 2;
  });
}

export function distanceToSegment([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : Math.min(Math.max(((x - ax) * dx + (y - ay) * dy) / length2, 0), 1);
  return Math.hypot(x - ax - along * dx, y - ay - along * dy);
}
