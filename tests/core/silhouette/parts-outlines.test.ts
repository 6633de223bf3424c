import { describe, expect, it } from 'vitest';
import { PARTS, type Part, type PartMap } from '../../../core/canopy/found-plant.ts';
import { flowerShare } from '../../../core/measures/flower-share.ts';
import type { PointPx } from '../../../core/raster/raster.ts';
import { partsOutlines } from '../../../core/silhouette/parts-outlines.ts';
import { zoneOutline } from '../../../core/silhouette/zone-outline.ts';
import { disc, drawMask, maskOf, unsureZone } from '../drawn-shapes.ts';

function partMap(width: number, height: number, partAt: (x: number, y: number) => Part): PartMap {
  const data = new Uint8Array(width * height);
  for (let i = 0; i < data.length; i++) {
    data[i] = PARTS.indexOf(partAt((i % width) + 0.5, Math.floor(i / width) + 0.5));
  }
  return { width, height, data };
}

/** Signed, so above 0 clockwise on screen. */
function area(loop: readonly PointPx[]): number {
  return loop.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = loop[(index + 1) % loop.length] as PointPx;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}

describe('the outlines of the parts', () => {
  it('go round each part that is seen, and are none for one that is not', () => {
    const outlines = partsOutlines(
      partMap(200, 200, (x, y) => (x > 50 && x < 150 && y > 100 && y < 180 ? 'pot' : 'background')),
    );
    expect([outlines.flower, outlines.soil, outlines.support]).toEqual([[], [], []]);
    expect(outlines.pot).toHaveLength(1);
    // The line through the middles of the pixel edges cuts half a px off each of the four corners.
    expect(area(outlines.pot[0] ?? [])).toBeCloseTo(100 * 80 - 4 * 0.125, 1);
  });

  it('are px of the raster however large it is, good to a px of the copy', () => {
    const [loop = []] = partsOutlines(
      partMap(1600, 1200, (x, y) => (disc([900, 500], 300)(x, y) ? 'flower' : 'leaf')),
    ).flower;
    const radii = loop.map(([x, y]) => Math.hypot(x - 900, y - 500));
    expect(Math.min(...radii)).toBeGreaterThan(297);
    expect(Math.max(...radii)).toBeLessThan(303);
  });

  it('run the other way round a gap, so that one path of all fills rightly', () => {
    const ring = (x: number, y: number) => disc([100, 100], 80)(x, y) && !disc([100, 100], 40)(x, y);
    const [outer = [], gap = []] = partsOutlines(
      partMap(200, 200, (x, y) => (ring(x, y) ? 'soil' : 'pot')),
    ).soil;
    expect(area(outer) / (Math.PI * 80 ** 2)).toBeCloseTo(1, 1);
    expect(area(gap) / (Math.PI * 40 ** 2)).toBeCloseTo(-1, 1);
  });

  it('leave specks out', () => {
    const { support } = partsOutlines(
      partMap(400, 400, (x, y) =>
        disc([100, 100], 2)(x, y) || disc([300, 300], 20)(x, y) ? 'support' : 'leaf',
      ),
    );
    expect(support).toHaveLength(1);
    expect(Math.min(...(support[0] ?? []).map(([x]) => x))).toBeGreaterThan(270);
  });

  it('have no more than 60 contours and 1200 points a part, the largest kept', () => {
    const { flower } = partsOutlines(
      partMap(800, 600, (x, y) => {
        const radius = 8 + 20 * (x / 800);
        const [dx, dy] = [(x % 60) - 30, (y % 60) - 30];
        return Math.hypot(dx, dy) < radius + 2 * Math.sin(9 * Math.atan2(dy, dx)) ? 'flower' : 'leaf';
      }),
    );
    expect(flower).toHaveLength(60);
    expect(flower.flat().length).toBeLessThanOrEqual(1200);
    const areas = flower.map(area);
    expect([...areas].sort((a, b) => b - a).map(Math.round)).toEqual(areas.map(Math.round));
  });
});

describe('the share of flower', () => {
  it('is flower over leaf and flower', () => {
    const parts = partMap(10, 10, (x, y) => (y > 5 ? 'pot' : x < 3 ? 'flower' : 'leaf'));
    expect(flowerShare(parts)).toBeCloseTo(0.3, 12);
  });

  it('is not known, rather than 0, when no flower was told from leaf', () => {
    expect(flowerShare(partMap(10, 10, () => 'leaf'))).toBeNull();
  });
});

describe('the outline of a zone', () => {
  it('lies where the zone lies in the raster', () => {
    const zone = unsureZone(drawMask(300, 200, disc([210, 120], 25)), { inCanopy: true, chance: 0.5 });
    const loop = zoneOutline(zone.mask);
    const radii = loop.map(([x, y]) => Math.hypot(x - 210, y - 120));
    expect(Math.min(...radii)).toBeGreaterThan(24);
    expect(Math.max(...radii)).toBeLessThan(26);
    expect(loop.length).toBeLessThanOrEqual(80);
  });

  it('is the longest of several, gaps left out', () => {
    const mask = maskOf(`
      ####..
      #..#..
      ####.#`);
    const loop = zoneOutline({ ...mask, left: 10, top: 20 });
    expect(Math.min(...loop.map(([x]) => x))).toBe(10);
    expect(Math.max(...loop.map(([x]) => x))).toBe(14);
    expect(area(loop)).toBeCloseTo(12 - 4 * 0.125, 9);
  });
});
