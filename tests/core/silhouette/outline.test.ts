import { polygonArea } from 'd3-polygon';
import { describe, expect, it } from 'vitest';
import { maskArea, type PointPx } from '../../../core/raster/raster.ts';
import { fillHoles } from '../../../core/silhouette/fill-holes.ts';
import { type Loop, traceOutlines } from '../../../core/silhouette/outline.ts';
import { reduceOutline } from '../../../core/silhouette/reduce-outline.ts';
import { readSilhouette } from '../../../core/silhouette/silhouette.ts';
import { subPixelOutline } from '../../../core/silhouette/sub-pixel-outline.ts';
import { disc, drawMask, maskOf } from '../drawn-shapes.ts';

/** Area inside a loop, px; positive clockwise on screen. */
function areaOf(loop: Loop): number {
  return -polygonArea(loop.map(([x, y]): [number, number] => [x, y]));
}

describe('the outline of a mask', () => {
  it('goes clockwise on screen round a single pixel', () => {
    expect(traceOutlines(maskOf('....\n..#.\n....'))).toEqual([
      [
        [2, 1],
        [3, 1],
        [3, 2],
        [2, 2],
      ],
    ]);
  });

  it('holds exactly the pixels, at the border of the picture too', () => {
    const mask = maskOf(`
      ##..#
      ##.##
      .###.
      ##...
    `);
    const loops = traceOutlines(mask);
    expect(loops).toHaveLength(1);
    expect(areaOf(loops[0] as Loop)).toBe(maskArea(mask));
  });

  it('keeps a thin slanting stem in one piece', () => {
    const loops = traceOutlines(maskOf('#...\n.#..\n..#.\n...#'));
    expect(loops).toHaveLength(1);
    expect(areaOf(loops[0] as Loop)).toBe(4);
  });

  it('tells pieces apart, the longest first', () => {
    const loops = traceOutlines(maskOf('#....\n...##\n...##'));
    expect(loops.map(areaOf)).toEqual([4, 1]);
  });

  it('is none for an empty mask', () => {
    expect(traceOutlines(maskOf('...\n...'))).toEqual([]);
  });
});

describe('gaps in a mask', () => {
  it('are filled when no way leads out', () => {
    expect(fillHoles(maskOf('###\n#.#\n###'))).toEqual(maskOf('###\n###\n###'));
  });

  it('stay open when a way leads to the border', () => {
    const open = maskOf('###\n#.#\n#.#');
    expect(fillHoles(open)).toEqual(open);
  });

  it('count into the gap fraction and not into the area', () => {
    const silhouette = readSilhouette(maskOf('.....\n.###.\n.#.#.\n.###.\n.....'));
    expect(silhouette?.areaPx).toBe(8);
    expect(silhouette?.filledAreaPx).toBe(9);
    expect(silhouette?.hullAreaPx).toBe(9);
    expect(silhouette?.centroidPx).toEqual([2.5, 2.5]);
  });
});

describe('the outline between the pixels', () => {
  it.each([40, 100, 300])('of a disc of radius %d px strays by less than 0.5 px anywhere', (radius) => {
    const side = 2 * radius + 20;
    const middle: PointPx = [side / 2 + 0.3, side / 2 - 0.2];
    const [corners] = traceOutlines(drawMask(side, side, disc(middle, radius)));
    const off = subPixelOutline(corners as Loop).map(
      ([x, y]) => Math.hypot(x - middle[0], y - middle[1]) - radius,
    );
    expect(Math.max(...off.map(Math.abs))).toBeLessThan(0.5);
    expect(Math.abs(off.reduce((sum, each) => sum + each, 0) / off.length)).toBeLessThan(0.05);
  });

  it('never leaves its pixel edge by more than half a px, so stems stay in place', () => {
    const mask = drawMask(
      120,
      120,
      (x, y) => disc([60, 70], 30)(x, y) || (Math.abs(x - 60) < 1.5 && y > 10 && y < 70),
    );
    const [corners] = traceOutlines(mask);
    const top = Math.min(...subPixelOutline(corners as Loop).map(([, y]) => y));
    expect(Math.abs(top - 10)).toBeLessThanOrEqual(0.5);
  });
});

describe('a thinned outline', () => {
  const mask = drawMask(
    500,
    500,
    (x, y) => disc([250, 260], 180)(x, y) || (Math.abs(x - 250) < 2 && y > 10 && y < 260),
  );
  const [corners] = traceOutlines(mask);
  const loop = subPixelOutline(corners as Loop);

  it('has no more points than asked for and keeps the tip of a thin stem', () => {
    const thin = reduceOutline(loop, 60);
    expect(thin.length).toBeLessThanOrEqual(60);
    expect(Math.min(...thin.map(([, y]) => y))).toBeCloseTo(Math.min(...loop.map(([, y]) => y)), 0);
    expect(Math.abs(areaOf(thin) / areaOf(loop) - 1)).toBeLessThan(0.01);
  });

  it('is the outline itself when it is short enough', () => {
    expect(reduceOutline(loop, loop.length)).toBe(loop);
  });

  it('refuses to leave less than a quadrangle', () => {
    expect(() => reduceOutline(loop, 3)).toThrow(
      new RangeError('Expected at least 4 for mostPoints but received 3'),
    );
  });
});
