import type { OpenCvDoor } from '../../opencv/door.ts';
import { resizeRaster } from '../../opencv/pictures.ts';
import type { PointPx, Raster } from '../../raster/raster.ts';
import { detailPicture } from './detail-picture.ts';
import { likeness } from './likeness.ts';

const PATCH_PX = 7;
const LEAST_LIKENESS = 0.6;

/**
 * How many corners are there and not only made by the camera's noise: two copies of the picture, one of its even rows and
 * one of its odd rows, share all that was before the camera and none of the noise.
 *
 * @param corners px of a copy of the given size
 */
export function countRealCorners(
  door: OpenCvDoor,
  raster: Raster,
  size: { readonly width: number; readonly height: number },
  corners: readonly PointPx[],
): number {
  const [even, odd] = [0, 1].map((first) =>
    detailPicture(door, resizeRaster(door, everyOtherRow(raster, first), size.width, size.height)),
  ) as [ReturnType<typeof detailPicture>, ReturnType<typeof detailPicture>];
  return corners.filter((corner) => likeness(even, corner, odd, corner, PATCH_PX) >= LEAST_LIKENESS).length;
}

function everyOtherRow({ width, height, data }: Raster, first: number): Raster {
  const rows = Math.floor(height / 2);
  const half = new Uint8Array(3 * width * rows);
  for (let row = 0; row < rows; row++) {
    const from = 3 * width * (2 * row + first);
    half.set(data.subarray(from, from + 3 * width), 3 * width * row);
  }
  return { width, height: rows, data: half };
}
