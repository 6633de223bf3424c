import type { OpenCvDoor } from '../opencv/door.ts';
import { maskParts } from '../opencv/masks.ts';
import { type Mask, maskArea } from '../raster/raster.ts';

/** Gaps smaller than this share of the mask are filled. */
export const SMALL_HOLE_SHARE = 0.001;

/** Fills enclosed gaps too small to be repeated from photo to photo, and keeps the others as holes. */
export function fillSmallHoles(door: OpenCvDoor, mask: Mask): Mask {
  const { width, height, data } = mask;
  const outside: Mask = { width, height, data: new Uint8Array(data.length) };
  for (let i = 0; i < data.length; i++) outside.data[i] = 1 - (data[i] as number);
  const { parts, labels } = maskParts(door, outside);
  const area = maskArea(mask);
  const fills = new Uint8Array(parts.length + 1);
  for (const { label, areaPx, left, top, width: wide, height: tall } of parts) {
    const enclosed = left > 0 && top > 0 && left + wide < width && top + tall < height;
    if (enclosed && areaPx < SMALL_HOLE_SHARE * area) fills[label] = 1;
  }
  const filled = data.slice();
  for (let i = 0; i < filled.length; i++) {
    filled[i] = (filled[i] as number) | (fills[labels[i] as number] as number);
  }
  return { width, height, data: filled };
}
