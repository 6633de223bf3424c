import type { OpenCvDoor } from '../../opencv/door.ts';
import type { PointPx } from '../../raster/raster.ts';
import { type FrameDoubt, frameDoubt } from './frame-doubt.ts';
import type { Homography } from './frame-fit.ts';
import { applyHomography, leastSquaresHomography } from './homography.ts';
import { homographyOf, leastSquaresSimilarity, moved, type Similarity } from './similarity.ts';

/** A ring mark of the stand sheet as seen in one picture; the same mark has the same id in every picture. */
export interface PlacedMark {
  readonly id: string;
  readonly centrePx: PointPx;
  /** One standard deviation of either coordinate, px. */
  readonly doubtPx: number;
}

/** A frame fitted to marks. */
export interface MarkFit {
  /** The turn, zoom and shift that come nearest. */
  readonly move: Similarity;
  readonly toStand: Homography;
  /** Root mean square miss of a mark, px. */
  readonly residualPx: number;
  readonly doubt: FrameDoubt;
}

/** Marks that a perspective needs, and how much larger than the marks' own doubt, and than this, the similarity's miss must be. */
const PERSPECTIVE_MARKS = 4;
const PERSPECTIVE_TIMES = 4;
const PERSPECTIVE_PX = 1;
/** Marks within this of one another fix no turn, px. */
const LEAST_APART_PX = 40;

/**
 * Fits the photo onto the reference by the stand sheet's ring marks.
 *
 * @param size of the reference, px
 * @returns `null` when fewer than two marks are seen in both pictures
 *
 * Notes: a similarity, weighted by the marks' doubt. With four marks or more whose miss is both above 1 px and four
 * times their doubt the sheet is seen at another angle, and `toStand` is a homography. A homography holds on the sheet's
 * plane only; `move` is what an outline at the plant's distance is turned and zoomed by.
 */
export function fitMarks(
  door: OpenCvDoor,
  photo: readonly PlacedMark[],
  reference: readonly PlacedMark[],
  size: { readonly width: number; readonly height: number },
): MarkFit | null {
  const pairs = photo.flatMap((mark) => {
    const before = reference.find(({ id }) => id === mark.id);
    if (before === undefined) return [];
    const doubtPx = Math.hypot(mark.doubtPx, before.doubtPx);
    return [{ from: mark.centrePx, to: before.centrePx, doubtPx, weight: 1 / (doubtPx ** 2 + 1e-4) }];
  });
  if (pairs.length < 2 || widestApartPx(pairs.map(({ to }) => to)) < LEAST_APART_PX) return null;
  const move = leastSquaresSimilarity(pairs);
  if (move === null) return null;
  const missOf = (place: (point: PointPx) => PointPx) =>
    Math.sqrt(
      pairs.reduce((sum, { from, to }) => {
        const [x, y] = place(from);
        return sum + (x - to[0]) ** 2 + (y - to[1]) ** 2;
      }, 0) / pairs.length,
    );
  const residualPx = missOf((point) => moved(move, point));
  const doubtPx = Math.sqrt(pairs.reduce((sum, pair) => sum + 2 * pair.doubtPx ** 2, 0) / pairs.length);
  const doubt = frameDoubt(
    pairs.map(({ to }) => to),
    coordinateDoubtPx(pairs.length, residualPx, doubtPx),
    size,
  );
  if (
    pairs.length >= PERSPECTIVE_MARKS &&
    residualPx > Math.max(PERSPECTIVE_PX, PERSPECTIVE_TIMES * doubtPx)
  ) {
    const homography = leastSquaresHomography(door, pairs);
    if (homography !== null) {
      const left = missOf((point) => applyHomography(homography, point));
      return { move, toStand: homography, residualPx: left, doubt };
    }
  }
  return { move, toStand: homographyOf(move), residualPx, doubt };
}

/**
 * One standard deviation of one coordinate of a mark: what the marks say of themselves, or what the fit leaves over when
 * that is more. A similarity takes four of the two coordinates of each mark.
 */
function coordinateDoubtPx(count: number, residualPx: number, doubtPx: number): number {
  const freedom = 2 * count - 4;
  const leftOver = freedom === 0 ? 0 : residualPx * Math.sqrt(count / freedom);
  return Math.max(leftOver, doubtPx / Math.SQRT2);
}

function widestApartPx(points: readonly PointPx[]): number {
  return Math.max(...points.flatMap(([x, y]) => points.map(([u, v]) => Math.hypot(x - u, y - v))));
}
