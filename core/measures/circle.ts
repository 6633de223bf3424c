import type { PointPx } from '../raster/raster.ts';

export interface Circle {
  readonly centre: PointPx;
  readonly radius: number;
}

/** Distances of points from a centre, in the points' unit. */
export function distancesFrom(centre: PointPx, points: readonly PointPx[]): Float64Array {
  const [centreX, centreY] = centre;
  const distances = new Float64Array(points.length);
  // Not Math.hypot, which takes ten times as long to guard against numbers that no picture has.
  for (let index = 0; index < points.length; index++) {
    const point = points[index] as PointPx;
    const dx = point[0] - centreX;
    const dy = point[1] - centreY;
    distances[index] = Math.sqrt(dx * dx + dy * dy);
  }
  return distances;
}

/** Middle of a cloud of points: the mean of x and of y. */
export function meanPoint(points: readonly PointPx[]): PointPx {
  let [sumX, sumY] = [0, 0];
  for (const [x, y] of points) {
    sumX += x;
    sumY += y;
  }
  return [sumX / points.length, sumY / points.length];
}

/** The circle through three points, or `null` when they lie on a line. */
export function circumcircle(a: PointPx, b: PointPx, c: PointPx): Circle | null {
  const [bx, by] = [b[0] - a[0], b[1] - a[1]];
  const [cx, cy] = [c[0] - a[0], c[1] - a[1]];
  const area = 2 * (bx * cy - by * cx);
  if (area === 0) return null;
  const ux = (cy * (bx * bx + by * by) - by * (cx * cx + cy * cy)) / area;
  const uy = (bx * (cx * cx + cy * cy) - cx * (bx * bx + by * by)) / area;
  return { centre: [a[0] + ux, a[1] + uy], radius: Math.hypot(ux, uy) };
}
