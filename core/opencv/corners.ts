import type { Mask, PointPx } from '../raster/raster.ts';
import type { Keep, OpenCvDoor } from './door.ts';
import { type GreyPicture, matOfGrey } from './grey-pictures.ts';
import { matOfMask } from './masks.ts';
import type { Mat, OpenCv } from './typings.ts';

/** Two places, one in each of two pictures, that look alike. Px with pixel centres at +0.5. */
export interface PointPair {
  readonly from: PointPx;
  readonly to: PointPx;
}

/** OpenCV counts from the middle of the first pixel, Rondure from its corner. */
const CENTRE = 0.5;

/** Share of the strongest corner's strength below which a corner is left out. */
const QUALITY = 0.01;

/**
 * Corners that can be followed, strongest first (Shi, Tomasi 1994).
 *
 * @param where only corners in this mask, of the picture's size
 */
export function goodCorners(
  door: OpenCvDoor,
  picture: GreyPicture,
  most: number,
  leastDistancePx: number,
  where: Mask,
): PointPx[] {
  return door.use((cv, keep) => {
    const corners = keep(new cv.Mat());
    const grey = matOfGrey(cv, keep, picture);
    const mask = matOfMask(cv, keep, where);
    cv.goodFeaturesToTrack(grey, corners, most, QUALITY, leastDistancePx, mask, 5, false, 0.04);
    return pointsOf(corners);
  });
}

/** Side of the window that is compared about a corner, and how many times the pictures are halved. */
const WINDOW_PX = 21;
const LEVELS = 2;
/** A corner followed there and back must come home, px. */
const MOST_STRAY_PX = 0.5;

/**
 * Follows corners from one picture into the next by pyramidal Lucas-Kanade (Bouguet 2000), there and back; a corner
 * that does not come home is left out.
 *
 * @param isWorthwhile asked before a pair is followed home, which takes as long as the way there
 */
export function followCorners(
  door: OpenCvDoor,
  from: GreyPicture,
  to: GreyPicture,
  corners: readonly PointPx[],
  isWorthwhile: (pair: PointPair) => boolean = () => true,
): PointPair[] {
  if (corners.length === 0) return [];
  return door.use((cv, keep) => {
    const [one, other] = [matOfGrey(cv, keep, from), matOfGrey(cv, keep, to)];
    const start = matOfPoints(cv, keep, corners);
    const there = follow(cv, keep, one, other, start);
    const places = pointsOf(there.points);
    const pairs = corners.flatMap((from, at): PointPair[] => {
      const pair = { from, to: places[at] as PointPx };
      return there.seen[at] === 1 && isWorthwhile(pair) ? [pair] : [];
    });
    if (pairs.length === 0) return [];
    // Each is followed by itself, so those that are given up already need not come home.
    const back = follow(
      cv,
      keep,
      other,
      one,
      matOfPoints(
        cv,
        keep,
        pairs.map(({ to }) => to),
      ),
    );
    const homes = pointsOf(back.points);
    return pairs.filter(({ from }, at) => {
      const home = homes[at] as PointPx;
      return back.seen[at] === 1 && Math.hypot(home[0] - from[0], home[1] - from[1]) <= MOST_STRAY_PX;
    });
  });
}

function follow(cv: OpenCv, keep: Keep, from: Mat, to: Mat, start: Mat) {
  const [points, seen, error] = [keep(new cv.Mat()), keep(new cv.Mat()), keep(new cv.Mat())];
  const window = new cv.Size(WINDOW_PX, WINDOW_PX);
  const criteria = new cv.TermCriteria(cv.TermCriteria_COUNT + cv.TermCriteria_EPS, 15, 0.01);
  cv.calcOpticalFlowPyrLK(from, to, start, points, seen, error, window, LEVELS, criteria);
  return { points, seen: seen.data.slice() };
}

function matOfPoints(cv: OpenCv, keep: Keep, points: readonly PointPx[]): Mat {
  const mat = keep(new cv.Mat(points.length, 1, cv.CV_32FC2));
  points.forEach(([x, y], at) => {
    mat.data32F[2 * at] = x - CENTRE;
    mat.data32F[2 * at + 1] = y - CENTRE;
  });
  return mat;
}

function pointsOf(mat: Mat): PointPx[] {
  const { data32F: values } = mat;
  return Array.from(
    { length: mat.rows },
    (_, at): PointPx => [(values[2 * at] as number) + CENTRE, (values[2 * at + 1] as number) + CENTRE],
  );
}
