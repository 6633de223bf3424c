import type { Mask } from '../raster/raster.ts';

/**
 * Fills the gaps of a mask: every outside pixel that cannot reach the picture's border becomes inside.
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
  const outside = new Uint8Array(width * height);
  const waiting: number[] = [];
  const visit = (index: number) => {
    if (data[index] === 0 && outside[index] === 0) {
      outside[index] = 1;
      waiting.push(index);
    }
  };

  // Start from every border pixel: the plant may cut the outside into several parts.
  for (let x = 0; x < width; x++) {
    visit(x);
    visit((height - 1) * width + x);
  }
  for (let y = 0; y < height; y++) {
    visit(y * width);
    visit(y * width + width - 1);
  }

  for (let index = waiting.pop(); index !== undefined; index = waiting.pop()) {
    const x = index % width;
    if (x > 0) visit(index - 1);
    if (x < width - 1) visit(index + 1);
    if (index >= width) visit(index - width);
    if (index < width * (height - 1)) visit(index + width);
  }
  return { width, height, data: outside.map((isOutside) => 1 - isOutside) };
}
