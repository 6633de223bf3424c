import type { OpenCvDoor } from '../../opencv/door.ts';
import type { GreyPicture } from '../../opencv/grey-pictures.ts';
import { resizeRaster } from '../../opencv/pictures.ts';
import type { PointPx, Raster } from '../../raster/raster.ts';
import { detailPicture } from './detail-picture.ts';
import { likeness } from './likeness.ts';

const PATCH_PX = 7;
const LEAST_LIKENESS = 0.6;
/** Beside itself, so many px off, a corner must look less like itself by so much; a place on a line does not. */
const BESIDE_PX = 4;
const LEAST_PECULIAR = 0.15;
/** Detail's standard deviation about a corner: what is fainter, a level or so of the photo, the camera's JPEG makes as well. */
const LEAST_SPREAD = 8;
const AROUND: readonly PointPx[] = Array.from({ length: 16 }, (_, k) => [
  BESIDE_PX * Math.cos((k * Math.PI) / 8),
  BESIDE_PX * Math.sin((k * Math.PI) / 8),
]);

/**
 * How many corners are there and not only made by the camera's noise: two copies of the picture, one of its even rows and
 * one of its odd rows, share all that was before the camera and none of the noise. Places on a bare line do not count: they look alike all along it and
 * hold nothing in its direction.
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
  return corners.filter((corner) => {
    const [x, y] = corner;
    if (spreadAbout(even, corner) < LEAST_SPREAD) return false;
    const itself = likeness(even, corner, odd, corner, PATCH_PX);
    const beside = AROUND.map(([dx, dy]) => likeness(even, corner, odd, [x + dx, y + dy], PATCH_PX));
    return itself >= LEAST_LIKENESS && Math.max(...beside) <= itself - LEAST_PECULIAR;
  }).length;
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

function spreadAbout({ width, height, data }: GreyPicture, [x, y]: PointPx): number {
  const [left, top] = [x, y].map((at) => Math.max(0, Math.floor(at) - PATCH_PX)) as [number, number];
  const [right, bottom] = [
    Math.min(width, Math.floor(x) + PATCH_PX + 1),
    Math.min(height, Math.floor(y) + PATCH_PX + 1),
  ];
  let [count, sum, squares] = [0, 0, 0];
  for (let row = top; row < bottom; row++) {
    for (let column = left; column < right; column++) {
      const value = data[row * width + column] as number;
      count++;
      sum += value;
      squares += value * value;
    }
  }
  return Math.sqrt(Math.max(0, squares / count - (sum / count) ** 2));
}
