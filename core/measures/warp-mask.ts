import type { Mask, PointPx } from '../raster/raster.ts';
import type { Silhouette } from '../silhouette/silhouette.ts';

/** A reduced copy of a mask with its outline moved. */
export interface WarpedMask {
  readonly mask: Mask;
  /** Place of the copy's top-left corner in the original, px. */
  readonly origin: PointPx;
  /** Original px a px of the copy. */
  readonly pxPerPx: number;
  /** Mean x of the copy's pixels, in px of the original. */
  readonly centroidXPx: number;
}

/** Radius that the ball has in the copy, at most: small enough to be quick, large enough to keep shoots. */
const BALL_RADIUS = 90;
const MARGIN = 8;

/**
 * Moves a silhouette's outline in or out along the rays from the ball's centre.
 *
 * @param silhouette px
 * @param ball centre and radius, px
 * @param outwardPx how far the canopy moves outwards in a direction, px
 * @returns a reduced copy: each of its pixels asks the original where it came from
 *
 * Notes: nearest pixel, so the copy's edge is good to half a px of its own; compare copies with copies only.
 *
 * Example: with `() => 0` the copy is the mask, reduced.
 */
export function warpMask(
  silhouette: Silhouette,
  ball: { readonly centrePx: PointPx; readonly radiusPx: number },
  outwardPx: (direction: PointPx) => number,
): WarpedMask {
  const { mask, leftPx, topPx, widthPx, heightPx } = silhouette;
  const pxPerPx = Math.max(1, ball.radiusPx / BALL_RADIUS);
  const marginPx = MARGIN * pxPerPx;
  const origin: PointPx = [leftPx - marginPx, topPx - marginPx];
  const width = Math.ceil((widthPx + 2 * marginPx) / pxPerPx);
  const height = Math.ceil((heightPx + 2 * marginPx) / pxPerPx);
  const data = new Uint8Array(width * height);
  let [sumX, count] = [0, 0];
  for (let row = 0; row < height; row++) {
    const dy = origin[1] + (row + 0.5) * pxPerPx - ball.centrePx[1];
    for (let column = 0; column < width; column++) {
      const x = origin[0] + (column + 0.5) * pxPerPx;
      const dx = x - ball.centrePx[0];
      const distance = Math.hypot(dx, dy);
      const share = distance > 0 ? Math.max(0, 1 - outwardPx([dx, dy]) / distance) : 1;
      const fromX = Math.floor(ball.centrePx[0] + dx * share);
      const fromY = Math.floor(ball.centrePx[1] + dy * share);
      if (fromX < 0 || fromY < 0 || fromX >= mask.width || fromY >= mask.height) continue;
      if (mask.data[fromY * mask.width + fromX] === 0) continue;
      data[row * width + column] = 1;
      sumX += x;
      count++;
    }
  }
  const centroidXPx = count > 0 ? sumX / count : ball.centrePx[0];
  return { mask: { width, height, data }, origin, pxPerPx, centroidXPx };
}
