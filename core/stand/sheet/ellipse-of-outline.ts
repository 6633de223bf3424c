import type { PointPx } from '../../raster/raster.ts';

/** Symmetric 2 × 2 matrix that turns the unit circle into an ellipse: [xx, xy, yy], px. */
export type EllipseShape = readonly [xx: number, xy: number, yy: number];

export interface Ellipse {
  readonly centrePx: PointPx;
  readonly shape: EllipseShape;
}

/**
 * The ellipse of the same area moments as a closed outline.
 *
 * @param points x, y, x, y … of the outline's corners, px
 * @returns `null` for an outline without area
 *
 * Notes: area moments by Green's theorem (polygon moments); an ellipse's second moments are its squared half axes ÷ 4.
 */
export function ellipseOfOutline(points: Int32Array): Ellipse | null {
  const count = points.length / 2;
  let [area, mx, my, mxx, mxy, myy] = [0, 0, 0, 0, 0, 0];
  const [x0, y0] = [points[0] as number, points[1] as number];
  let [px, py] = [(points[2 * count - 2] as number) - x0, (points[2 * count - 1] as number) - y0];
  for (let k = 0; k < count; k++) {
    const [x, y] = [(points[2 * k] as number) - x0, (points[2 * k + 1] as number) - y0];
    const cross = px * y - x * py;
    area += cross / 2;
    mx += (cross * (px + x)) / 6;
    my += (cross * (py + y)) / 6;
    mxx += (cross * (px * px + px * x + x * x)) / 12;
    myy += (cross * (py * py + py * y + y * y)) / 12;
    mxy += (cross * (2 * px * py + px * y + x * py + 2 * x * y)) / 24;
    [px, py] = [x, y];
  }
  if (Math.abs(area) < 1) return null;
  const [cx, cy] = [mx / area, my / area];
  const root = matrixRoot([
    4 * (mxx / area - cx * cx),
    4 * (mxy / area - cx * cy),
    4 * (myy / area - cy * cy),
  ]);
  return root === null ? null : { centrePx: [cx + x0, cy + y0], shape: root };
}

/** How far an outline strays from its ellipse: mean of |distance ÷ ellipse's own − 1| over the points. */
export function strayFromEllipse(points: Int32Array, { centrePx, shape }: Ellipse): number {
  const [xx, xy, yy] = shape;
  const determinant = xx * yy - xy * xy;
  const count = points.length / 2;
  let stray = 0;
  for (let k = 0; k < count; k++) {
    const x = (points[2 * k] as number) - centrePx[0];
    const y = (points[2 * k + 1] as number) - centrePx[1];
    stray += Math.abs(Math.hypot(yy * x - xy * y, xx * y - xy * x) / determinant - 1);
  }
  return stray / count;
}

/** Half axes, longer first, and the longer one's direction, degrees clockwise from the right on screen. */
export function ellipseAxes([xx, xy, yy]: EllipseShape): {
  longer: number;
  shorter: number;
  turnDeg: number;
} {
  const middle = (xx + yy) / 2;
  const spread = Math.hypot((xx - yy) / 2, xy);
  return {
    longer: middle + spread,
    shorter: middle - spread,
    turnDeg: (Math.atan2(2 * xy, xx - yy) * 90) / Math.PI,
  };
}

/** Square root of a symmetric positive 2 × 2 matrix; `null` when it is not positive. */
function matrixRoot([xx, xy, yy]: EllipseShape): EllipseShape | null {
  const determinant = xx * yy - xy * xy;
  if (!(determinant > 0 && xx > 0)) return null;
  const root = Math.sqrt(determinant);
  const scale = Math.sqrt(xx + yy + 2 * root);
  return [(xx + root) / scale, xy / scale, (yy + root) / scale];
}
