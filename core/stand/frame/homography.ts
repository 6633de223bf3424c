import type { PointPair } from '../../opencv/corners.ts';
import type { OpenCvDoor } from '../../opencv/door.ts';
import type { PointPx } from '../../raster/raster.ts';
import type { Homography } from './frame-fit.ts';

/** Where a homography brings a point. */
export function applyHomography(h: Homography, [x, y]: PointPx): PointPx {
  const w = h[6] * x + h[7] * y + h[8];
  return [(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w];
}

/**
 * The homography that brings `from` nearest to `to`: normalised direct linear transformation, then Levenberg-Marquardt on
 * the miss.
 *
 * @param pairs four or more
 * @returns `null` when the places fix none
 *
 * Reference: Hartley, Zisserman (2004), Multiple View Geometry, chapter 4.
 */
export function leastSquaresHomography(door: OpenCvDoor, pairs: readonly PointPair[]): Homography | null {
  if (pairs.length < 4) return null;
  return door.use((cv, keep) => {
    const [from, to] = (['from', 'to'] as const).map((end) => {
      const mat = keep(new cv.Mat(pairs.length, 1, cv.CV_32FC2));
      mat.data32F.set(pairs.flatMap((pair) => [...pair[end]]));
      return mat;
    }) as [InstanceType<typeof cv.Mat>, InstanceType<typeof cv.Mat>];
    const found = keep(cv.findHomography(from, to, 0));
    const values = [...found.data64F];
    return values.length === 9 ? (values as unknown as Homography) : null;
  });
}
