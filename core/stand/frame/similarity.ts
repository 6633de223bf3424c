import type { PointPx } from '../../raster/raster.ts';
import type { Homography } from './frame-fit.ts';

/** A turn, a zoom and a shift: `[x, y]` goes to `[a x - b y + shiftX, b x + a y + shiftY]`. */
export interface Similarity {
  /** Zoom times cosine and sine of the turn. */
  readonly a: number;
  readonly b: number;
  readonly shiftX: number;
  readonly shiftY: number;
}

export const IDENTITY: Similarity = { a: 1, b: 0, shiftX: 0, shiftY: 0 };

export function moved({ a, b, shiftX, shiftY }: Similarity, [x, y]: PointPx): PointPx {
  return [a * x - b * y + shiftX, b * x + a * y + shiftY];
}

/** A turn by `turnDeg` (clockwise on screen) and a zoom about `centre`, then a shift. */
export function similarityAbout(
  centre: PointPx,
  { shiftPx, turnDeg, zoom }: { readonly shiftPx: PointPx; readonly turnDeg: number; readonly zoom: number },
): Similarity {
  const turnRad = (turnDeg * Math.PI) / 180;
  const [a, b] = [zoom * Math.cos(turnRad), zoom * Math.sin(turnRad)];
  const [x, y] = centre;
  return { a, b, shiftX: x + shiftPx[0] - a * x + b * y, shiftY: y + shiftPx[1] - b * x - a * y };
}

export function inverseOf({ a, b, shiftX, shiftY }: Similarity): Similarity {
  const square = a * a + b * b;
  return {
    a: a / square,
    b: -b / square,
    shiftX: -(a * shiftX + b * shiftY) / square,
    shiftY: (b * shiftX - a * shiftY) / square,
  };
}

/** First `first`, then `then`. */
export function chained(first: Similarity, then: Similarity): Similarity {
  const [shiftX, shiftY] = moved(then, [first.shiftX, first.shiftY]);
  return {
    a: then.a * first.a - then.b * first.b,
    b: then.b * first.a + then.a * first.b,
    shiftX,
    shiftY,
  };
}

/** The same move on a picture that is `factor` times as large. */
export function scaledUp(move: Similarity, factor: number): Similarity {
  return { ...move, shiftX: move.shiftX * factor, shiftY: move.shiftY * factor };
}

export function zoomOf({ a, b }: Similarity): number {
  return Math.hypot(a, b);
}

/** Degrees, clockwise on screen positive. */
export function turnDegOf({ a, b }: Similarity): number {
  return (Math.atan2(b, a) * 180) / Math.PI;
}

export function homographyOf({ a, b, shiftX, shiftY }: Similarity): Homography {
  return [a, -b, shiftX, b, a, shiftY, 0, 0, 1];
}

/** Two places that belong together, and how much the pair counts. */
export interface WeightedPair {
  readonly from: PointPx;
  readonly to: PointPx;
  readonly weight: number;
}

/**
 * The similarity that brings `from` onto `to` with the least weighted sum of squares.
 *
 * @returns `null` when fewer than two places differ
 *
 * Reference: the closed form for a plane, Umeyama (1991), Least-squares estimation of transformation parameters between
 * two point patterns, without mirror images.
 *
 * Example: `(0,0)→(5,5), (1,0)→(5,7)` is a zoom by 2 and a quarter turn clockwise on screen.
 */
export function leastSquaresSimilarity(pairs: readonly WeightedPair[]): Similarity | null {
  let [sum, fromX, fromY, toX, toY] = [0, 0, 0, 0, 0];
  for (const { from, to, weight } of pairs) {
    sum += weight;
    fromX += weight * from[0];
    fromY += weight * from[1];
    toX += weight * to[0];
    toY += weight * to[1];
  }
  if (!(sum > 0)) return null;
  const [middleX, middleY] = [fromX / sum, fromY / sum];
  const [targetX, targetY] = [toX / sum, toY / sum];
  let [spread, along, across] = [0, 0, 0];
  for (const { from, to, weight } of pairs) {
    const [x, y] = [from[0] - middleX, from[1] - middleY];
    const [u, v] = [to[0] - targetX, to[1] - targetY];
    spread += weight * (x * x + y * y);
    along += weight * (x * u + y * v);
    across += weight * (x * v - y * u);
  }
  if (!(spread > 0)) return null;
  const [a, b] = [along / spread, across / spread];
  if (!(Math.hypot(a, b) > 0)) return null;
  return { a, b, shiftX: targetX - a * middleX + b * middleY, shiftY: targetY - b * middleX - a * middleY };
}
