import { describe, expect, it } from 'vitest';
import { seededNoise } from '../../../../core/measures/seeded-noise.ts';
import type { PointPx } from '../../../../core/raster/raster.ts';
import { frameDoubt } from '../../../../core/stand/frame/frame-doubt.ts';
import {
  IDENTITY,
  leastSquaresSimilarity,
  moved,
  turnDegOf,
  zoomOf,
} from '../../../../core/stand/frame/similarity.ts';

const SIZE = { width: 1600, height: 1200 };
/** Unevenly strewn, mostly in one corner. */
const PLACES: readonly PointPx[] = [
  [120, 90],
  [300, 160],
  [180, 420],
  [460, 330],
  [610, 120],
  [250, 700],
  [900, 210],
  [140, 980],
];

describe('the doubt of a frame', () => {
  it('is that of a square worked by hand', () => {
    const square: PointPx[] = [
      [700, 500],
      [900, 500],
      [900, 700],
      [700, 700],
    ];
    const { turnDeg, zoomShare, shiftPx } = frameDoubt(square, 0.1, SIZE);
    // d² = 2 · 100², n = 4: 0.1 ÷ √(4 · 20 000); the square lies in the picture's middle, so the shift is 0.1 · √(2 ÷ 4).
    expect(zoomShare).toBeCloseTo(0.1 / Math.sqrt(80_000), 12);
    expect(turnDeg).toBeCloseTo(0.02026, 5);
    expect(shiftPx).toBeCloseTo(0.1 / Math.SQRT2, 12);
  });

  it('is how much fits to shaken places really differ', () => {
    const [noise, spreadPx, fits] = [seededNoise(7), 0.5, 4000];
    const stated = frameDoubt(PLACES, spreadPx, SIZE);
    const sums = { turn: 0, zoom: 0, shift: 0, overall: 0, places: 0 };
    for (let fit = 0; fit < fits; fit++) {
      const shaken = PLACES.map(([x, y]) => ({
        from: [x, y] as PointPx,
        to: [x + spreadPx * noise.normal(), y + spreadPx * noise.normal()] as PointPx,
        weight: 1,
      }));
      const move = leastSquaresSimilarity(shaken) ?? IDENTITY;
      const missSquared = ([x, y]: PointPx) => {
        const [u, v] = moved(move, [x, y]);
        return (u - x) ** 2 + (v - y) ** 2;
      };
      sums.turn += turnDegOf(move) ** 2;
      sums.zoom += (zoomOf(move) - 1) ** 2;
      sums.shift += missSquared([SIZE.width / 2, SIZE.height / 2]);
      for (let across = 0.5; across < 8; across++) {
        for (let down = 0.5; down < 8; down++) {
          sums.overall += missSquared([(across / 8) * SIZE.width, (down / 8) * SIZE.height]);
          sums.places++;
        }
      }
    }
    // 4000 fits give a standard deviation to 1.1 % (1 ÷ √(2 · 4000)); a grid of 8 × 8 misses 1 % of the corners' share.
    const near = (sum: number, count: number, wanted: number) =>
      expect(Math.abs(Math.sqrt(sum / count) / wanted - 1)).toBeLessThan(0.04);
    near(sums.turn, fits, stated.turnDeg);
    near(sums.zoom, fits, stated.zoomShare);
    near(sums.shift, fits, stated.shiftPx);
    near(sums.overall, sums.places, stated.overallPx);
  });

  it('has no end where all places are one', () => {
    expect(frameDoubt([PLACES[0] as PointPx, PLACES[0] as PointPx], 0.1, SIZE).turnDeg).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
});
