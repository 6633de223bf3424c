import { describe, expect, it } from 'vitest';
import { croftonPerimeter } from '../../core/measures/crofton-perimeter.ts';
import { fillOf } from '../../core/measures/fill.ts';
import { lopsidednessPercent } from '../../core/measures/lopsidedness.ts';
import { measureSilhouette } from '../../core/measures/measure-silhouette.ts';
import { mirrorSymmetry } from '../../core/measures/symmetry.ts';
import type { Mask, PointPx } from '../../core/raster/raster.ts';
import { readSilhouette } from '../../core/silhouette/silhouette.ts';
import { drawMask, foundPlant } from '../core/drawn-shapes.ts';
import { DRAWN, type DrawnName } from './drawn-set.ts';

/**
 * Source: nine shapes drawn once. Pixels and solidity by image-js 1.7.0, whose hull goes round the pixels' corners as ours
 * does; pixel counts the same in scikit-image 0.19.3 and OpenCV 4.6.0; Crofton perimeter (four directions) by scikit-image;
 * circle round the pixels' middles and largest distance transform by OpenCV.
 */
const SHAPES: readonly (readonly [
  name: DrawnName,
  pixels: number,
  solidity: number,
  crofton: number,
  around: number,
  within: number,
])[] = [
  ['disc50', 7845, 0.98198, 315.2621, 50.0001, 50.01],
  ['ellipse80x40', 10041, 0.98124, 388.8854, 80.0001, 40.0125],
  ['square80', 6400, 1, 302.2683, 55.8615, 40],
  ['L80', 4800, 0.85714, 301.7129, 55.8615, 24],
  ['square80_rot30', 6401, 0.96911, 325.607, 56.0447, 40.2244],
  ['ellipse80x40_rot30', 10033, 0.98392, 387.3935, 79.756, 40.2244],
  ['rose5', 11537, 0.84619, 460.8263, 71.9161, 48.0104],
  ['halfdisc60', 5705, 0.98413, 303.997, 60.0001, 30.0167],
  ['disc_bite', 9440, 0.85122, 412.9632, 60.0001, 40],
];

const L80 = DRAWN.L80;

function extrasOfMask(mask: Mask) {
  const silhouette = readSilhouette(mask);
  return silhouette && measureSilhouette(silhouette, foundPlant(mask)).extras;
}

describe('drawn shapes that other libraries measured', () => {
  it.each(SHAPES)('have the pixels and solidity printed for %s', (name, pixels, solidity) => {
    const silhouette = readSilhouette(DRAWN[name]);
    expect(silhouette?.areaPx).toBe(pixels);
    expect(silhouette && fillOf(silhouette).solidity).toBeCloseTo(solidity, 5);
  });

  it.each(SHAPES)('have the Crofton perimeter printed for %s', (name, _, __, crofton) => {
    expect(croftonPerimeter(DRAWN[name])).toBeCloseTo(crofton, 3);
  });

  // OpenCV's circle goes round the pixels' middles and is 1e-4 too large by its own doing; ours goes round the outline, which
  // lies up to half a pixel's diagonal further out and, where it is smoothed, not at all.
  it.each(SHAPES)(
    'have the circle round %s that OpenCV prints, by up to 0.71 px more',
    (name, _, __, ___, around) => {
      const more = (extrasOfMask(DRAWN[name])?.circumscribedRadiusPx ?? Number.NaN) - (around - 1e-4);
      expect(more).toBeGreaterThan(-0.05);
      expect(more).toBeLessThan(0.71);
    },
  );

  // The distance transform reaches from pixel middle to the middle of the nearest pixel outside: up to 0.71 px further than the
  // edge between them. Its own centre must be a pixel's middle, which costs it up to 0.71 px.
  it.each(SHAPES)(
    'have the circle inside %s that OpenCV prints, to 0.75 px',
    (name, _, __, ___, ____, within) => {
      const read = extrasOfMask(DRAWN[name])?.inscribedRadiusPx ?? Number.NaN;
      expect(Math.abs(read - (within - 0.5))).toBeLessThan(0.75);
    },
  );

  it('have the printed centroids', () => {
    // Printed: 74.8214 and 91.9220 in whole-number columns; ours are half a pixel on.
    expect(readSilhouette(DRAWN.halfdisc60)?.centroidPx[0]).toBeCloseTo(74.8214 + 0.5, 4);
    expect(readSilhouette(DRAWN.disc_bite)?.centroidPx[0]).toBeCloseTo(91.922 + 0.5, 4);
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

/** Draws a polygon, its points turned by an angle about the middle of the picture. */
function turnedPolygon(points: readonly PointPx[], turnDeg: number): Mask {
  const [sin, cos] = [Math.sin((turnDeg * Math.PI) / 180), Math.cos((turnDeg * Math.PI) / 180)];
  const corners = points.map(([x, y]): PointPx => [130 + x * cos - y * sin, 130 + x * sin + y * cos]);
  return drawMask(260, 260, (x, y) => {
    let isInside = false;
    corners.forEach(([ax, ay], index) => {
      const [bx, by] = corners[(index + 1) % corners.length] as PointPx;
      if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) isInside = !isInside;
    });
    return isInside;
  });
}

/** Largest mirror overlap over all lines: the shape is turned and the upright axis moved. */
function axiality(points: readonly PointPx[]): number {
  let best = 0;
  for (let turnDeg = 0; turnDeg < 180; turnDeg += 1.5) {
    const mask = turnedPolygon(points, turnDeg);
    const middle = readSilhouette(mask)?.centroidPx[0] ?? Number.NaN;
    for (let off = -9; off <= 9; off += 1.5)
      best = Math.max(best, mirrorSymmetry(mask, middle + off, null) ?? 0);
  }
  return best / 100;
}

describe('the largest symmetry over all axes', () => {
  const centred = (points: readonly PointPx[], scale: number): PointPx[] => {
    const [x, y] = [0, 1].map(
      (k) => points.reduce((sum, point) => sum + (point[k] as number), 0) / points.length,
    );
    return points.map((point) => [scale * (point[0] - (x as number)), scale * (point[1] - (y as number))]);
  };

  // Source: exact polygon clipping with grid search, computed once with another program (GEOS). Tolerance: the search here goes by
  // 1.5° and 1.5 px of 200, on pixels. Bounds: every convex body has 2/3 at least (Lassak, 2002); an isosceles triangle has 1.
  it.each<[string, PointPx[], number]>([
    [
      '3-4-5 triangle',
      centred(
        [
          [0, 0],
          [4, 0],
          [0, 3],
        ],
        45,
      ),
      0.88148,
    ],
    [
      'parallelogram',
      centred(
        [
          [0, 0],
          [2, 0],
          [3, 1],
          [1, 1],
        ],
        60,
      ),
      0.86848,
    ],
    [
      'isosceles triangle',
      centred(
        [
          [0, 0],
          [4, 0],
          [2, 3],
        ],
        45,
      ),
      1,
    ],
  ])('is the known axiality for a %s', (_, points, known) => {
    const read = axiality(points);
    expect(Math.abs(read - known)).toBeLessThan(0.012);
    expect(read).toBeGreaterThan(2 / 3);
  });

  it('is whole for an L about its diagonal', () => {
    const diagonal = turnedPolygon(
      centred(
        [
          [0, 0],
          [2, 0],
          [2, 1],
          [1, 1],
          [1, 2],
          [0, 2],
        ],
        40,
      ),
      45,
    );
    const middle = readSilhouette(diagonal)?.centroidPx[0] ?? Number.NaN;
    expect(mirrorSymmetry(diagonal, middle, null)).toBeGreaterThan(99);
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
