import type { PointPx } from '../../raster/raster.ts';

/** How sure a fitted similarity is: one standard deviation of each of its numbers. */
export interface FrameDoubt {
  /** Of the place that the picture's middle goes to, across and down together, px. */
  readonly shiftPx: number;
  readonly turnDeg: number;
  /** As a share of the zoom. */
  readonly zoomShare: number;
}

/** A frame's doubt, and that of its place anywhere in the picture, root mean square, px. */
export interface PlaceDoubt extends FrameDoubt {
  readonly overallPx: number;
}

/**
 * How sure a similarity is that was fitted to places by least squares: the covariance of shift, turn and zoom.
 *
 * With n places of spread s about their own middle, d their root mean square distance from it, turn (in radians) and zoom are
 * each known to s ÷ (d √n), and a place at the distance e from that middle to s √(2/n · (1 + e²/d²)).
 *
 * @param places where the fit rests, px of the reference, at least two
 * @param spreadPx standard deviation of one coordinate of a place, px
 * @param size of the picture, px
 *
 * Notes: the places' errors are taken as independent. Two places so near one another that they fix no turn leave it
 * infinitely doubtful.
 *
 * Reference: covariance of linear least squares, JCGM 102:2011 (GUM) §6.2; the design is orthogonal about the middle.
 *
 * Example: four places at the corners of a square of 200 px, good to 0.1 px: the turn is good to 0.02°.
 */
export function frameDoubt(
  places: readonly PointPx[],
  spreadPx: number,
  { width, height }: { readonly width: number; readonly height: number },
): PlaceDoubt {
  const count = places.length;
  const middleX = places.reduce((sum, [x]) => sum + x, 0) / count;
  const middleY = places.reduce((sum, [, y]) => sum + y, 0) / count;
  const spreadOut = places.reduce((sum, [x, y]) => sum + (x - middleX) ** 2 + (y - middleY) ** 2, 0) / count;
  const ofMiddle = (middleX - width / 2) ** 2 + (middleY - height / 2) ** 2;
  const ofPicture = (width * width + height * height) / 12 + ofMiddle;
  const placePx = (awaySquared: number) => spreadPx * Math.sqrt((2 / count) * (1 + awaySquared / spreadOut));
  const turnRad = spreadPx / Math.sqrt(count * spreadOut);
  return {
    shiftPx: placePx(ofMiddle),
    turnDeg: (turnRad * 180) / Math.PI,
    zoomShare: turnRad,
    overallPx: placePx(ofPicture),
  };
}
