import type { OpenCvDoor } from '../opencv/door.ts';
import { maskParts } from '../opencv/masks.ts';
import type { Mask } from '../raster/raster.ts';

/** Gaps smaller than this share of the mask are filled. */
export const SMALL_HOLE_SHARE = 0.001;

/** Fills enclosed gaps too small to be repeated from photo to photo, and keeps the others as holes. */
export function fillSmallHoles(door: OpenCvDoor, mask: Mask): Mask {
  const { width, height, data } = mask;
  const outside: Mask = { width, height, data: data.map((inside) => 1 - inside) };
  const { parts, labels } = maskParts(door, outside);
  const area = data.reduce((sum, inside) => sum + inside, 0);
  const fills = new Uint8Array(parts.length + 1);
  for (const { label, areaPx, left, top, width: wide, height: tall } of parts) {
    const enclosed = left > 0 && top > 0 && left + wide < width && top + tall < height;
    if (enclosed && areaPx < SMALL_HOLE_SHARE * area) fills[label] = 1;
  }
  return { width, height, data: data.map((inside, i) => inside | (fills[labels[i] as number] as number)) };
}
