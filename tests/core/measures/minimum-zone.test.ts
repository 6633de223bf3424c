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
    expect(Math.abs((robustCircle(oval)?.radius ?? 0) / plain - 1)).toBeLessThan(0.002);
  });

  /** A ball of radius 100 with a dent (a bulge, if above 0) on its right shoulder; all but the lowest directions are seen. */
  const dented = (height: number, widthDeg: number, seenDeg: number) =>
    around(720, (turn) => {
      const fromTopDeg = (turn / (2 * Math.PI) - 0.5) * seenDeg;
      const radius = 100 * (1 + height * Math.exp(-((fromTopDeg - 45) ** 2) / (2 * widthDeg ** 2)));
      const angle = ((fromTopDeg - 90) * Math.PI) / 180;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    });

  it('hardly feels a dent or a bulge of a third of what is seen', () => {
    for (const height of [-0.2, 0.15]) {
      // Plain least squares is off by 3.4 and 2.7 %.
      expect(Math.abs((robustCircle(dented(height, 25, 360))?.radius ?? 0) - 100)).toBeLessThan(1.3);
      expect(Math.abs((robustCircle(dented(height, 15, 280))?.radius ?? 0) - 100)).toBeLessThan(0.5);
    }
  });

  it('leaves a broad dent of two fifths out in part', () => {
    const radius = robustCircle(dented(-0.2, 25, 280))?.radius ?? 0;
    expect(radius).toBeGreaterThan(97.9);
    expect(radius).toBeLessThan(99);
  });

  it('has arrived, however many points there are and whatever their unit', () => {
    const points = dented(-0.2, 25, 280);
    const everyOther = points.filter((_, index) => index % 2 === 0);
    const [all, half] = [robustCircle(points), robustCircle(everyOther)];
    expect(Math.abs((all?.radius ?? 0) - (half?.radius ?? 0))).toBeLessThan(0.05);
    const larger = points.map(([x, y]): PointPx => [7 * x + 900, 7 * y - 300]);
    expect((robustCircle(larger)?.radius ?? 0) / 7).toBeCloseTo(all?.radius ?? 0, 3);
  });

  it('gives one answer for an oval of which less than two thirds are seen', () => {
    const oval = around(360, (turn) => {
      const angle = ((turn / (2 * Math.PI) - 0.5) * 220 * Math.PI) / 180 - Math.PI / 2;
      return [112 * Math.cos(angle), 90 * Math.sin(angle)];
    });
    const plain = leastSquaresCircle(oval)?.radius ?? Number.NaN;
    expect(Math.abs((robustCircle(oval)?.radius ?? 0) / plain - 1)).toBeLessThan(0.015);
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
