import { describe, expect, it } from 'vitest';
import { openOpenCv } from '../../../core/opencv/door.ts';
import { matOfMask } from '../../../core/opencv/masks.ts';
import type { Mat, OpenCv } from '../../../core/opencv/typings.ts';
import { closeMask, dilateMask, erodeMask, openMask } from '../../../core/raster/discs.ts';
import type { Mask } from '../../../core/raster/raster.ts';
import { maskOf } from '../drawn-shapes.ts';

/** Specks, blots and gaps, some cut by the border. */
function speckled(width: number, height: number, seed: number): Mask {
  let state = seed;
  const next = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const data = new Uint8Array(width * height);
  for (let blot = 0; blot < 40; blot++) {
    const [x, y, reach] = [next() * width, next() * height, next() * 9];
    const value = next() < 0.6 ? 1 : 0;
    for (let i = 0; i < data.length; i++) {
      if (Math.hypot((i % width) - x, Math.floor(i / width) - y) < reach) data[i] = value;
    }
  }
  return { width, height, data };
}

type Operation = (cv: OpenCv, from: Mat, to: Mat, disc: Mat) => void;

/** The same by OpenCV's own discs. */
async function byOpenCv(mask: Mask, radiusPx: number, operation: Operation): Promise<Uint8Array> {
  const door = await openOpenCv();
  return door.use((cv, keep) => {
    const side = 2 * Math.round(radiusPx) + 1;
    const disc = keep(cv.getStructuringElement(cv.MORPH_ELLIPSE, new cv.Size(side, side)));
    const to = keep(new cv.Mat());
    operation(cv, matOfMask(cv, keep, mask), to, disc);
    return to.data.slice();
  });
}

describe('masks grown and shrunk by discs', () => {
  it('grows a px to a disc', () => {
    const grown = dilateMask(
      maskOf(`
        .......
        .......
        .......
        ...#...
        .......
        .......
        .......
      `),
      2,
    );
    expect(grown).toEqual(
      maskOf(`
        .......
        ...#...
        .#####.
        .#####.
        .#####.
        ...#...
        .......
      `),
    );
  });

  it('takes what lies beyond the border for inside when it shrinks', () => {
    const full = maskOf(`
      ###
      ###
    `);
    expect(erodeMask(full, 1)).toEqual(full);
  });

  it.each([1, 1.5, 2, 3, 4, 5, 6, 8, 9, 13])(
    'agrees with OpenCV to the px at a radius of %s px',
    async (radiusPx) => {
      for (const seed of [1, 2, 3]) {
        const mask = speckled(61, 47, seed);
        const close: Operation = (cv, from, to, disc) => cv.morphologyEx(from, to, cv.MORPH_CLOSE, disc);
        expect(dilateMask(mask, radiusPx).data).toEqual(
          await byOpenCv(mask, radiusPx, (cv, from, to, disc) => cv.dilate(from, to, disc)),
        );
        const eroded = await byOpenCv(mask, radiusPx, (cv, from, to, disc) => cv.erode(from, to, disc));
        expect(erodeMask(mask, radiusPx).data).toEqual(eroded);
        expect(closeMask(mask, radiusPx).data).toEqual(await byOpenCv(mask, radiusPx, close));
        expect(openMask(mask, radiusPx).data).toEqual(
          await byOpenCv({ ...mask, data: eroded }, radiusPx, (cv, from, to, disc) =>
            cv.dilate(from, to, disc),
          ),
        );
      }
    },
  );

  it('leaves a mask as it is for less than half a px', () => {
    const mask = speckled(20, 10, 4);
    expect(dilateMask(mask, 0.4)).toBe(mask);
    expect(erodeMask(mask, 0.4)).toBe(mask);
  });
});
