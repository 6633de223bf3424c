import { describe, expect, it } from 'vitest';
import { distanceToSegment, isUnder } from '../../../web/src/mend/brush.ts';
import { contains, dabsOver, zoneStrokes } from '../../../web/src/mend/zone-dabs.ts';
import { openZones, zoneAfter } from '../../../web/src/mend/zone-steps.ts';
import type { UnsureZone } from '../../../web/src/photo/outline-words.ts';
import type { Point } from '../../../web/src/photo/points.ts';

const circle = (x: number, y: number, radius: number): Point[] =>
  Array.from({ length: 72 }, (_, i) => [
    x + radius * Math.cos((i * Math.PI) / 36),
    y + radius * Math.sin((i * Math.PI) / 36),
  ]);

/** A band 8 px wide along three quarters of a circle: the shape a doubtful edge has. */
const BAND: Point[] = [
  ...Array.from({ length: 55 }, (_, i) => at(100, i)),
  ...Array.from({ length: 55 }, (_, i) => at(92, 54 - i)),
];
function at(radius: number, step: number): Point {
  return [
    200 + radius * Math.cos((step * 1.5 * Math.PI) / 54),
    200 + radius * Math.sin((step * 1.5 * Math.PI) / 54),
  ];
}

const SHAPES: Record<string, Point[]> = {
  blob: circle(200, 200, 40),
  band: BAND,
  L: [
    [0, 0],
    [30, 0],
    [30, 120],
    [150, 120],
    [150, 150],
    [0, 150],
  ],
  speck: circle(10, 10, 2),
};

/** Places of a fine grid, told apart by whether they lie in the zone. */
function placesOf(outline: readonly Point[]): { inside: Point[]; outside: Point[] } {
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const [left, top, right, bottom] = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  const step = Math.max(right - left, bottom - top) / 90;
  const places = { inside: [] as Point[], outside: [] as Point[] };
  for (let y = top - 10 * step; y < bottom + 10 * step; y += step) {
    for (let x = left - 10 * step; x < right + 10 * step; x += step) {
      (contains(outline, [x, y]) ? places.inside : places.outside).push([x, y]);
    }
  }
  return places;
}

describe('the answer to an unsure zone', () => {
  for (const [name, outline] of Object.entries(SHAPES)) {
    it(`covers at least 80 % of a ${name} and leaves it by no more than a tenth of its area`, () => {
      const strokes = zoneStrokes(outline, true);
      const { inside, outside } = placesOf(outline);
      const under = (place: Point) => strokes.some((stroke) => isUnder(place, stroke));
      expect(inside.filter(under).length / inside.length).toBeGreaterThan(0.8);
      expect(outside.filter(under).length / inside.length).toBeLessThan(0.1);
    });
  }

  it('is few strokes, also along a thin edge', () => {
    expect(zoneStrokes(SHAPES.blob as Point[], true).length).toBeLessThanOrEqual(12);
    expect(zoneStrokes(BAND, true).length).toBeLessThanOrEqual(12);
  });

  it('keeps the zone for yes and removes it for no', () => {
    expect(new Set(zoneStrokes(BAND, true).map(({ kind }) => kind))).toEqual(new Set(['keep']));
    expect(new Set(zoneStrokes(BAND, false).map(({ kind }) => kind))).toEqual(new Set(['remove']));
  });

  it('begins with the roomiest place: in a circle its middle and radius', () => {
    const [first] = dabsOver(circle(200, 200, 40));
    expect(Math.hypot((first?.at[0] ?? 0) - 200, (first?.at[1] ?? 0) - 200)).toBeLessThan(2);
    expect(first?.radiusPx).toBeGreaterThan(38);
  });

  it('is nothing for a zone without room', () => {
    expect(zoneStrokes([], true)).toEqual([]);
  });
});

describe('stepping through unsure zones', () => {
  const zone = (outlinePx: Point[]): UnsureZone => ({ outlinePx, inCanopy: true, chance: 0.5, areaPx: 1 });
  const zones = [zone(circle(100, 100, 20)), zone(circle(300, 100, 20)), zone(BAND)];

  it('leaves out those a stroke has spoken about, by answer or by brush', () => {
    expect(openZones(zones, [])).toHaveLength(3);
    expect(openZones(zones, zoneStrokes(circle(100, 100, 20), false))).toEqual(zones.slice(1));
    const brushed = {
      kind: 'keep' as const,
      widthPx: 10,
      pointsPx: [
        [250, 100],
        [350, 100],
      ] as Point[],
    };
    expect(openZones(zones, [brushed])).toEqual([zones[0], zones[2]]);
  });

  it('goes round again after the last', () => {
    expect([zoneAfter(3, 0), zoneAfter(3, 2), zoneAfter(0, 0)]).toEqual([1, 0, 0]);
  });
});

describe('distance to a line', () => {
  it('is to its nearest end beyond the ends, and to the point of a dab', () => {
    expect(distanceToSegment([3, 4], [0, 0], [0, 0])).toBe(5);
    expect(distanceToSegment([13, 4], [0, 0], [10, 0])).toBe(5);
    expect(distanceToSegment([5, -2], [0, 0], [10, 0])).toBe(2);
  });
});
