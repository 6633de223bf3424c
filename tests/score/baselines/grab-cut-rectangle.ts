import type { OpenCvDoor } from '../../../core/opencv/door.ts';
import { grabCut } from '../../../core/opencv/pictures.ts';
import type { Mask, Raster } from '../../../core/raster/raster.ts';

/** The rectangle's distance from the photo's edges, share of each side. */
const MARGIN = 0.05;
const ROUNDS = 5;
/** OpenCV's marks. */
const [OUTSIDE, PROBABLY_INSIDE] = [0, 3];

/**
 * Everything that GrabCut takes for the object inside a rectangle 5 % from the photo's edges, as when nobody draws.
 *
 * Reference: Rother, Kolmogorov and Blake (2004), "GrabCut": interactive foreground extraction using iterated graph
 * cuts, ACM Trans. Graphics 23(3), 309–314.
 */
export function cutByGrabCutRectangle(raster: Raster, door: OpenCvDoor): Mask {
  const { width, height } = raster;
  const [across, down] = [Math.round(MARGIN * width), Math.round(MARGIN * height)];
  const start = new Uint8Array(width * height).fill(OUTSIDE);
  for (let y = down; y < height - down; y++) {
    start.fill(PROBABLY_INSIDE, y * width + across, (y + 1) * width - across);
  }
  return { width, height, data: grabCut(door, raster, start, ROUNDS).map((mark) => mark & 1) };
}
