import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circumcircle } from '../../../core/measures/circle.ts';
import { clockOf } from '../../../core/measures/clock.ts';
import { leastSquaresCircle } from '../../../core/measures/least-squares-circle.ts';
import { minimumZoneCircle, zoneAbout } from '../../../core/measures/minimum-zone-circle.ts';
import { robustCircle } from '../../../core/measures/robust-circle.ts';
import type { PointPx } from '../../../core/raster/raster.ts';

const around = (count: number, place: (angle: number) => PointPx): PointPx[] =>
  Array.from({ length: count }, (_, index) => place((2 * Math.PI * index) / count));

const width = (points: readonly PointPx[]) => {
  const zone = minimumZoneCircle(points);
  return (zone?.outerRadius ?? Number.NaN) - (zone?.innerRadius ?? Number.NaN);
};

/** The best width by trying every pair of pairs of contacts: slow and sure. */
function exhaustiveWidth(points: readonly PointPx[]): number {
  let best = Number.POSITIVE_INFINITY;
  const count = points.length;
  for (let a = 0; a < count; a++)
    for (let b = a + 1; b < count; b++)
      for (let c = 0; c < count; c++)
        for (let d = c + 1; d < count; d++) {
          const centre = equidistant(points[a], points[b], points[c], points[d]);
          if (centre === null) continue;
          const zone = zoneAbout(centre, points);
          best = Math.min(best, zone.outerRadius - zone.innerRadius);
        }
  return best;
}

function equidistant(a = [0, 0] as PointPx, b = a, c = a, d = a): PointPx | null {
  const [p, q, r, s] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const e = (b[0] ** 2 + b[1] ** 2 - a[0] ** 2 - a[1] ** 2) / 2;
  const f = (d[0] ** 2 + d[1] ** 2 - c[0] ** 2 - c[1] ** 2) / 2;
  const determinant = p * s - q * r;
  return Math.abs(determinant) < 1e-12
    ? null
    : [(e * s - f * q) / determinant, (p * f - r * e) / determinant];
}

describe('the minimum zone', () => {
  it('of an oval is its two half axes', () => {
    const zone = minimumZoneCircle(
      around(720, (angle) => [7 + 5 * Math.cos(angle), -2 + 4 * Math.sin(angle)]),
    );
    expect(zone?.outerRadius).toBeCloseTo(5, 9);
    expect(zone?.innerRadius).toBeCloseTo(4, 9);
    expect(zone?.centre[0]).toBeCloseTo(7, 9);
  });

  it('of a true circle is nothing', () => {
    expect(width(around(720, (angle) => [100 * Math.cos(angle), 100 * Math.sin(angle)]))).toBeLessThan(1e-9);
  });

  it('of three points is the circle through them', () => {
    expect(
      width([
        [0, 0],
        [4, 0],
        [0, 3],
      ]),
    ).toBeLessThan(1e-12);
    expect(circumcircle([0, 0], [4, 0], [0, 3])?.radius).toBeCloseTo(2.5, 12);
  });

  it('is that of exhaustive search on ragged rings', () => {
    const ring = fc.array(fc.double({ min: 0.8, max: 1.2, noNaN: true }), { minLength: 6, maxLength: 12 });
    fc.assert(
      fc.property(ring, (radii) => {
        const points = around(radii.length, (angle) => {
          const radius = radii[Math.round((angle / (2 * Math.PI)) * radii.length)] ?? 1;
          return [radius * Math.cos(angle), radius * Math.sin(angle)];
        });
        expect(width(points)).toBeLessThanOrEqual(exhaustiveWidth(points) + 1e-9);
      }),
      { numRuns: 60, seed: 3 },
    );
  });

  it('does not change when the points are moved, turned or mirrored', () => {
    const ragged = around(90, (angle) => {
      const radius = 50 + 3 * Math.cos(3 * angle) + Math.sin(7 * angle + 1);
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    });
    const still = width(ragged);
    expect(width(ragged.map(([x, y]): PointPx => [x + 1e4, y - 2e4]))).toBeCloseTo(still, 8);
    expect(width(ragged.map(([x, y]): PointPx => [-y, x]))).toBeCloseTo(still, 9);
    expect(width(ragged.map(([x, y]): PointPx => [-x, y]))).toBeCloseTo(still, 9);
  });

  it('is not known for points on a line', () => {
    expect(
      minimumZoneCircle([
        [0, 0],
        [1, 1],
        [2, 2],
        [5, 5],
      ]),
    ).toBeNull();
  });

  it('refuses two points', () => {
    expect(() =>
      minimumZoneCircle([
        [0, 0],
        [1, 1],
      ]),
    ).toThrow(new RangeError('Expected at least 3 for points.length but received 2'));
  });
});

describe('the robust circle', () => {
  it('is the plain one on an even oval', () => {
    const oval = around(360, (angle) => [50 * Math.cos(angle), 40 * Math.sin(angle)]);
    const plain = leastSquaresCircle(oval)?.radius ?? Number.NaN;
    expect(Math.abs((robustCircle(oval)?.radius ?? 0) / plain - 1)).toBeLessThan(0.02);
  });

  it('leaves out a third of the directions when they are stems', () => {
    const stemmed = around(360, (angle) => {
      const radius = Math.cos(3 * angle) > 0.55 ? 150 : 100;
      return [radius * Math.cos(angle) + 5, radius * Math.sin(angle)];
    });
    const circle = robustCircle(stemmed);
    expect(circle?.radius).toBeCloseTo(100, 3);
    expect(circle?.centre[0]).toBeCloseTo(5, 3);
  });
});

describe('the clock in a photo', () => {
  it.each([
    [-90, 12],
    [0, 3],
    [90, 6],
    [180, 9],
    [-180, 9],
    [-61, 1],
    [-74, 1],
    [-76, 12],
    [269, 12],
    [345, 3],
  ])('reads %d° (down is 90) as %d', (degrees, hour) => {
    expect(clockOf((degrees * Math.PI) / 180)).toBe(hour);
  });
});
