import { expect, it } from 'vitest';
import { nearestWithin } from '../../../core/canopy/nearest-colour.ts';
import { openOpenCv } from '../../../core/opencv/door.ts';
import { matOfPlane } from '../../../core/opencv/pictures.ts';
import type { LabPicture } from '../../../core/raster/lab.ts';

const [WIDTH, HEIGHT] = [37, 23];

function noisy(seed: number): LabPicture {
  let state = seed;
  const plane = () =>
    Float32Array.from({ length: WIDTH * HEIGHT }, () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return (100 * state) / 2 ** 32;
    });
  return { width: WIDTH, height: HEIGHT, l: plane(), a: plane(), b: plane() };
}

it.each([1, 2, 3])(
  'holds what is seen within OpenCV’s lowest and highest of %s px around',
  async (reachPx) => {
    const [seen, empty] = [noisy(1), noisy(2)];
    const door = await openOpenCv();
    const extremes = (plane: Float32Array, operation: 'dilate' | 'erode') =>
      door.use((cv, keep) => {
        const side = 2 * reachPx + 1;
        const square = keep(cv.getStructuringElement(cv.MORPH_RECT, new cv.Size(side, side)));
        const to = keep(new cv.Mat());
        cv[operation](matOfPlane(cv, keep, plane, WIDTH, HEIGHT), to, square);
        return to.data32F.slice();
      });
    const nearest = nearestWithin(seen, empty, reachPx);
    for (const channel of ['l', 'a', 'b'] as const) {
      const low = extremes(empty[channel], 'erode');
      const high = extremes(empty[channel], 'dilate');
      expect(nearest[channel]).toEqual(
        seen[channel].map((value, i) => Math.max(low[i] as number, Math.min(high[i] as number, value))),
      );
    }
  },
);
