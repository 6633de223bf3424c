import { windowAround } from '../canopy/window.ts';
import type { Mask } from '../raster/raster.ts';

/**
 * Fills the gaps of a mask: every outside pixel that cannot reach the plant's surroundings becomes inside.
 *
 * @param mask canopy, px of the working raster
 * @returns a new mask; the inside is taken as 8-connected, so the outside is walked in 4 directions
 *
 * Notes: two leaves that touch only at a corner close the gap between them.
 *
 * Reference: Rosenfeld and Pfaltz (1966), Sequential operations in digital picture processing, for the
 * pairing of 8- and 4-connectedness.
 *
 * Example: a ring of eight pixels comes back as a full square of nine.
 */
export function fillHoles(mask: Mask): Mask {
  const { width, height, data } = mask;
  const filled = new Uint8Array(width * height);
  const window = windowAround(mask);
  if (window === null) return { width, height, data: filled };
  const { left, top } = window;
  const [right, bottom] = [left + window.width - 1, top + window.height - 1];

  // Everything in the window counts as inside until the outside is walked away from it.
  for (let y = top; y <= bottom; y++) filled.fill(1, y * width + left, y * width + right + 1);
  const waiting = new Int32Array(window.width * window.height);
  let count = 0;
  const visit = (index: number) => {
    if (data[index] === 1 || filled[index] === 0) return;
    filled[index] = 0;
    waiting[count++] = index;
  };

  // Start from the whole rim of the window: the plant may cut the outside into several parts.
  for (let x = left; x <= right; x++) {
    visit(top * width + x);
    visit(bottom * width + x);
  }
  for (let y = top; y <= bottom; y++) {
    visit(y * width + left);
    visit(y * width + right);
  }
  while (count > 0) {
    const index = waiting[--count] as number;
    const y = Math.floor(index / width);
    const x = index - y * width;
    if (x > left) visit(index - 1);
    if (x < right) visit(index + 1);
    if (y > top) visit(index - width);
    if (y < bottom) visit(index + width);
  }
  return { width, height, data: filled };
}
