import { boundsOf } from '../../../core/raster/bounds.ts';
import type { BenchView } from '../../../server/schemas/pages.ts';
import type { View } from '../../../server/schemas/sitting.ts';

export type Point = readonly [number, number];

/** A rectangle in photo px. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The smallest upright box around the points; `null` for no points. */
export function boxAround(points: readonly Point[]): Box | null {
  const bounds = boundsOf(points);
  if (bounds === null) return null;
  const { left, top, right, bottom } = bounds;
  return { x: left, y: top, width: right - left, height: bottom - top };
}

/** Closed outline as an SVG path, to a tenth of a px. */
export function outlinePath(points: readonly Point[]): string {
  if (points.length === 0) return '';
  return `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`;
}

/** Every point of interest of a view: outline, of the bench's views its corners; ball, rim, tips. */
export function pointsOfInterest(view: View | BenchView): Point[] {
  const { ball, axis, longStems } = view.report ?? { ball: null, axis: null, longStems: [] };
  const points: Point[] = [
    ...('outlinePx' in view ? view.outlinePx : view.outlineCornersPx),
    ...longStems.map((stem) => stem.tipPx),
  ];
  if (ball) {
    const [x, y] = ball.centrePx;
    points.push([x - ball.radiusPx, y - ball.radiusPx], [x + ball.radiusPx, y + ball.radiusPx]);
  }
  if (axis) points.push(axis.rimLeftPx, axis.rimRightPx);
  return points;
}
