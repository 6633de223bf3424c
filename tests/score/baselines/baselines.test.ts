import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openOpenCv } from '../../../core/opencv/door.ts';
import type { Raster } from '../../../core/raster/raster.ts';
import { cutByBackdropAndGrabCut } from './backdrop-and-grab-cut.ts';
import { cutByExcessGreen, excessGreen } from './excess-green.ts';
import { cutByExcessGreenMinusRed, excessGreenMinusRed } from './excess-green-minus-red.ts';
import { cutByGrabCutRectangle } from './grab-cut-rectangle.ts';
import { otsuSplit, otsuThreshold } from './otsu.ts';

describe('Otsu’s split', () => {
  it('parts the 36-pixel example of six grey levels between 2 and 3', () => {
    // A worked example of the method met in many courses (from memory), worked out again by hand: the variance between
    // the classes is 1.5928, 2.5635, 2.6287, 2.1417 and 0.8705 for a split before level 1, 2, 3, 4 and 5.
    expect(otsuSplit([8, 7, 2, 6, 9, 4])).toBe(3);
  });

  it('takes the lowest of equally good splits, as OpenCV does', () => {
    const counts = new Array<number>(256).fill(0);
    counts[50] = 60;
    counts[200] = 40;
    expect(otsuSplit(counts)).toBe(51);
  });

  it('parts nothing when all are alike', () => {
    expect(otsuSplit([0, 7, 0])).toBe(0);
    expect(otsuThreshold(Float32Array.of(3, 3, 3))).toBe(3);
  });

  it('lies between two clusters of numbers of any range', () => {
    const threshold = otsuThreshold(Float32Array.of(-0.4, -0.39, -0.41, 1.6, 1.61));
    expect(threshold).toBeGreaterThan(-0.39);
    expect(threshold).toBeLessThanOrEqual(1.6);
  });
});

describe('excess green', () => {
  it('is 2 for pure green, -1 for pure red and blue, 0 for greys and black', () => {
    expect(excessGreen(0, 255, 0)).toBe(2);
    expect(excessGreen(255, 0, 0)).toBe(-1);
    expect(excessGreen(0, 0, 255)).toBe(-1);
    expect(excessGreen(90, 90, 90)).toBe(0);
    expect(excessGreen(0, 0, 0)).toBe(0);
  });

  it('is 3g - 1, as the chromatic coordinates add up to 1', () => {
    const byte = fc.integer({ min: 0, max: 255 });
    fc.assert(
      fc.property(byte, byte, byte, (red, green, blue) => {
        fc.pre(red + green + blue > 0);
        expect(excessGreen(red, green, blue)).toBeCloseTo((3 * green) / (red + green + blue) - 1, 12);
      }),
    );
  });

  it('minus excess red is 3 for pure green, -2.4 for pure red, -0.133 for grey', () => {
    expect(excessGreenMinusRed(0, 255, 0)).toBe(3);
    expect(excessGreenMinusRed(255, 0, 0)).toBeCloseTo(-2.4, 12);
    expect(excessGreenMinusRed(90, 90, 90)).toBeCloseTo(-0.4 / 3, 12);
  });
});

describe('the baselines', () => {
  const side = 60;
  const inside = (i: number) => Math.hypot((i % side) - 30, Math.floor(i / side) - 28) < 15;
  /** A green disc before near-white, with a grain that no two neighbours share. */
  const disc: Raster = {
    width: side,
    height: side,
    data: Uint8Array.from({ length: 3 * side * side }, (_, k) => {
      const i = Math.floor(k / 3);
      const colour = inside(i) ? [60, 120, 40] : [228, 226, 222];
      return (colour[k % 3] as number) + ((i * 7919 + k * 104729) % 13) - 6;
    }),
  };

  it.each([
    ['excess green', cutByExcessGreen],
    ['excess green minus red', cutByExcessGreenMinusRed],
    ['GrabCut from a rectangle', cutByGrabCutRectangle],
    ['backdrop colours and GrabCut', cutByBackdropAndGrabCut],
  ] as const)('%s cuts a green disc from a plain backdrop to the pixel', async (_, cut) => {
    const { data } = cut(disc, await openOpenCv());
    const wrong = data.reduce((sum, canopy, i) => sum + (canopy === (inside(i) ? 1 : 0) ? 0 : 1), 0);
    // The graph cut may draw the outline, of some 94 px, a little straighter.
    expect(wrong).toBeLessThanOrEqual(4);
  });
});
