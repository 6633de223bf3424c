import { describe, expect, it } from 'vitest';
import { fillOf } from '../../core/measures/fill.ts';
import { lopsidednessPercent } from '../../core/measures/lopsidedness.ts';
import { mirrorSymmetry } from '../../core/measures/symmetry.ts';
import type { Mask } from '../../core/raster/raster.ts';
import { readSilhouette } from '../../core/silhouette/silhouette.ts';
import { drawMask } from '../core/drawn-shapes.ts';

/** Draws as the table's author did: 200 × 200, a pixel is inside by its whole-number column and row. */
function drawn(inside: (x: number, y: number) => boolean): Mask {
  return drawMask(200, 200, (x, y) => inside(x - 0.5, y - 0.5));
}

const square = (x: number, y: number) => x >= 60 && x < 140 && y >= 60 && y < 140;
const turned = (x: number, y: number): [number, number] => {
  const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
  return [(x - 100) * cos + (y - 100) * sin, -(x - 100) * sin + (y - 100) * cos];
};
const discOf = (cx: number, radius: number) => (x: number, y: number) =>
  (x - cx) ** 2 + (y - 100) ** 2 <= radius ** 2;

const L80 = drawn((x, y) => square(x, y) && !(x >= 100 && y < 100));

/**
 * Source: nine shapes drawn once and measured with image-js 1.7.0, whose hull goes round the pixels' corners as
 * ours does; pixel counts the same in scikit-image 0.19.3 and OpenCV 4.6.0. Solidity is printed to five digits.
 */
const SHAPES: readonly (readonly [name: string, mask: Mask, pixels: number, solidity: number])[] = [
  ['disc50', drawn(discOf(100, 50)), 7845, 0.98198],
  ['ellipse80x40', drawn((x, y) => ((x - 100) / 80) ** 2 + ((y - 100) / 40) ** 2 <= 1), 10041, 0.98124],
  ['square80', drawn(square), 6400, 1],
  ['L80', L80, 4800, 0.85714],
  ['square80_rot30', drawn((x, y) => turned(x, y).every((side) => Math.abs(side) <= 40)), 6401, 0.96911],
  [
    'ellipse80x40_rot30',
    drawn((x, y) => (turned(x, y)[0] / 80) ** 2 + (turned(x, y)[1] / 40) ** 2 <= 1),
    10033,
    0.98392,
  ],
  [
    'rose5',
    drawn(
      (x, y) => Math.hypot(x - 100, y - 100) <= 60 * (1 + 0.2 * Math.cos(5 * Math.atan2(y - 100, x - 100))),
    ),
    11537,
    0.84619,
  ],
  ['halfdisc60', drawn((x, y) => discOf(100, 60)(x, y) && x <= 100), 5705, 0.98413],
  ['disc_bite', drawn((x, y) => discOf(100, 60)(x, y) && !discOf(150, 30)(x, y)), 9440, 0.85122],
];

describe('drawn shapes that other libraries measured', () => {
  it.each(SHAPES)('have the pixels and solidity printed for %s', (_, mask, pixels, solidity) => {
    const silhouette = readSilhouette(mask);
    expect(silhouette?.areaPx).toBe(pixels);
    expect(silhouette && fillOf(silhouette).solidity).toBeCloseTo(solidity, 5);
  });

  it('have the printed centroids', () => {
    // Printed: 74.8214 and 91.9220 in whole-number columns; ours are half a pixel on.
    expect(readSilhouette(SHAPES[7]?.[1] as Mask)?.centroidPx[0]).toBeCloseTo(74.8214 + 0.5, 4);
    expect(readSilhouette(SHAPES[8]?.[1] as Mask)?.centroidPx[0]).toBeCloseTo(91.922 + 0.5, 4);
  });
});

describe('mirror symmetry', () => {
  // Source: exact values (polygon clipping) for the same shapes; L about the middle of its box: Dice 2/3.
  it('is two thirds for an L about the middle of its box', () => {
    expect(mirrorSymmetry(L80, 100, null)).toBeCloseTo(200 / 3, 9);
  });

  it('is two thirds for an L about its centroid', () => {
    const axis = readSilhouette(L80)?.centroidPx[0] ?? Number.NaN;
    expect(mirrorSymmetry(L80, axis, null)).toBeCloseTo(200 / 3, 9);
  });

  it('is 5/8 for a 2 : 1 rectangle about its diagonal', () => {
    // Drawn 800 × 400 and turned so that the diagonal stands upright. Tolerance: the staircase of 2400 edge pixels.
    const tilt = Math.atan2(400, 800) - Math.PI / 2;
    const mask = drawMask(1000, 1000, (x, y) => {
      const [dx, dy] = [x - 500, y - 500];
      const along = dx * Math.cos(tilt) + dy * Math.sin(tilt);
      const across = -dx * Math.sin(tilt) + dy * Math.cos(tilt);
      return Math.abs(along) <= 400 && Math.abs(across) <= 200;
    });
    expect(mirrorSymmetry(mask, 500, null)).toBeCloseTo(62.5, 0);
  });

  // Source: closed form (2 acos d − 2 d √(1 − d²)) ÷ π for a disc of radius 1 whose axis is off by d.
  it.each([
    [0.05, 93.6365],
    [0.1, 87.2889],
    [0.2, 74.706],
    [0.3, 62.3838],
  ])('costs a disc what the closed form says when the axis is off by %d of the radius', (off, dice) => {
    const mask = drawMask(820, 820, (x, y) => Math.hypot(x - 410, y - 410) <= 400);
    // Tolerance: 0.05 of 100, the staircase of a disc of radius 400.
    expect(Math.abs((mirrorSymmetry(mask, 410 + 400 * off, null) ?? 0) - dice)).toBeLessThan(0.05);
  });
});

describe('lopsidedness', () => {
  // Source: centroid of a half disc, 4 r ÷ 3π from its flat side.
  it('is 42.4 % for a half disc with its flat side on the axis', () => {
    const mask = drawMask(820, 820, (x, y) => Math.hypot(x - 410, y - 410) <= 400 && x >= 410);
    const centroidX = readSilhouette(mask)?.centroidPx[0] ?? Number.NaN;
    expect(lopsidednessPercent(centroidX, 410, 400)).toBeCloseTo(400 / (3 * Math.PI), 1);
  });
});
