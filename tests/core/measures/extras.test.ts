import { describe, expect, it } from 'vitest';
import { areaRoundness } from '../../../core/measures/area-roundness.ts';
import { bestAxis } from '../../../core/measures/best-axis.ts';
import { croftonPerimeter, formFactor } from '../../../core/measures/crofton-perimeter.ts';
import { deviationsOf } from '../../../core/measures/deviations.ts';
import { largestInnerCircle } from '../../../core/measures/inscribed-circle.ts';
import { measureSilhouette } from '../../../core/measures/measure-silhouette.ts';
import { minimumCircumscribedCircle } from '../../../core/measures/minimum-circumscribed-circle.ts';
import type { Mask, PointPx } from '../../../core/raster/raster.ts';
import { readSilhouette } from '../../../core/silhouette/silhouette.ts';
import { disc, drawMask, foundPlant, maskOf, rim } from '../drawn-shapes.ts';

const extrasOfMask = (mask: Mask, pot: ReturnType<typeof rim> | null = null) => {
  const silhouette = readSilhouette(mask);
  if (silhouette === null) throw new Error('The drawing is empty.');
  return measureSilhouette(silhouette, foundPlant(mask, pot)).extras;
};

const around = (count: number, place: (angle: number) => PointPx): PointPx[] =>
  Array.from({ length: count }, (_, index) => place((2 * Math.PI * index) / count));

describe('the perimeter by crossings', () => {
  it('counts each edge of a single pixel once a line', () => {
    // 2 crossings along its row, 2 along its column, 2 on each of two diagonals.
    expect(croftonPerimeter(maskOf('...\n.#.\n...'))).toBeCloseTo((Math.PI / 8) * (4 + 4 / Math.SQRT2), 12);
  });

  it('sees edges at the border of the picture', () => {
    const inside = croftonPerimeter(maskOf('....\n.##.\n.##.\n....'));
    expect(croftonPerimeter(maskOf('##\n##'))).toBeCloseTo(inside, 12);
  });

  it('is nothing for an empty mask', () => {
    expect(croftonPerimeter(maskOf('..\n..'))).toBe(0);
  });

  // Four directions give a disc 0.35 % at radius 50, as scikit-image does; it does not grow with size.
  it.each([20, 50, 100, 200])('of a disc of radius %d px is 2πr within 1.7 %', (radius) => {
    const side = 2 * radius + 20;
    const read = croftonPerimeter(drawMask(side, side, disc([side / 2, side / 2], radius)));
    expect(Math.abs(read / (2 * Math.PI * radius) - 1)).toBeLessThan(0.017);
  });
});

describe('ways to say how round', () => {
  it('know the analytic values', () => {
    // Disc 1, square π/4, half disc 2π²/(π + 2)²; area ÷ circumscribed circle: square 2/π, half disc 1/2.
    expect(formFactor(Math.PI * 9, 6 * Math.PI)).toBeCloseTo(1, 12);
    expect(formFactor(16, 16)).toBeCloseTo(Math.PI / 4, 12);
    expect(formFactor((Math.PI * 25) / 2, 5 * (Math.PI + 2))).toBeCloseTo(0.74668, 5);
    expect(areaRoundness(16, 2 * Math.SQRT2)).toBeCloseTo(2 / Math.PI, 12);
    expect(areaRoundness((Math.PI * 25) / 2, 5)).toBeCloseTo(0.5, 12);
  });

  it('read a drawn disc as one and a drawn square as a square', () => {
    const round = extrasOfMask(drawMask(460, 460, disc([230, 230], 200)));
    expect(round?.circularityCrofton).toBeGreaterThan(0.985);
    expect(round?.circularityCrofton).toBeLessThan(1.01);
    expect(round?.areaRoundness).toBeGreaterThan(0.99);
    expect(round?.areaRoundness).toBeLessThanOrEqual(1);
    expect(Math.abs((round?.circumscribedRadiusPx ?? 0) - 200)).toBeLessThan(0.6);
    expect(Math.abs((round?.inscribedRadiusPx ?? 0) - 200)).toBeLessThan(0.6);
    const square = extrasOfMask(
      drawMask(460, 460, (x, y) => Math.abs(x - 230) < 150 && Math.abs(y - 230) < 150),
    );
    expect(square?.areaRoundness).toBeCloseTo(2 / Math.PI, 2);
    expect(square?.inscribedRadiusPx).toBeCloseTo(150, 0);
    // Known bias of four directions on a level square: the perimeter reads 5.5 % short.
    expect(square?.circularityCrofton).toBeCloseTo(Math.PI / 4 / 0.945 ** 2, 1);
  });

  it('leave gaps in the canopy out', () => {
    const whole = disc([130, 130], 100);
    const gaps = (x: number, y: number) => disc([100, 120], 9)(x, y) || disc([160, 150], 14)(x, y);
    const closed = extrasOfMask(drawMask(260, 260, whole));
    expect(extrasOfMask(drawMask(260, 260, (x, y) => whole(x, y) && !gaps(x, y)))).toEqual(closed);
  });

  it('tell a long stem by the circumscribed circle, not by the inscribed one', () => {
    const ball = disc([230, 260], 150);
    const stem = (x: number, y: number) => Math.abs(x - 230) < 4 && y < 260 && y > 50;
    const bare = extrasOfMask(drawMask(460, 460, ball));
    const stemmed = extrasOfMask(drawMask(460, 460, (x, y) => ball(x, y) || stem(x, y)));
    // The circle round ball and stem: half of what reaches from the ball's foot at 410 to the tip at 50.
    expect(stemmed?.circumscribedRadiusPx).toBeCloseTo(180, 0);
    expect(stemmed?.inscribedRadiusPx).toBeCloseTo(bare?.inscribedRadiusPx ?? 0, 0);
  });

  it('are not known for a single row of pixels', () => {
    expect(extrasOfMask(drawMask(60, 20, (_, y) => y > 5 && y < 6))?.inscribedRadiusPx ?? 0).toBeLessThan(1);
  });
});

describe('deviations about the least-squares circle', () => {
  it('are half and whole of a ring that jumps by two', () => {
    const ring = around(40, (angle) => {
      const radius = Math.round((angle / (2 * Math.PI)) * 40) % 2 === 0 ? 9 : 11;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    });
    const deviations = deviationsOf(ring);
    expect(deviations?.peakToValleyPx).toBeCloseTo(2, 9);
    expect(deviations?.peakPx).toBeCloseTo(1, 9);
    expect(deviations?.valleyPx).toBeCloseTo(1, 9);
    expect(deviations?.rootMeanSquarePx).toBeCloseTo(1, 9);
  });

  it('of an oval are a − b, and 1 ÷ 2√2 of it as root mean square', () => {
    // r ≈ mean + (a − b)/2 · cos 2θ for a slight oval.
    const deviations = deviationsOf(
      around(720, (angle) => [100.5 * Math.cos(angle), 99.5 * Math.sin(angle)]),
    );
    expect(deviations?.peakToValleyPx).toBeCloseTo(1, 6);
    expect(deviations?.rootMeanSquarePx).toBeCloseTo(1 / (2 * Math.SQRT2), 2);
  });

  it('are not known for points on a line', () => {
    expect(
      deviationsOf([
        [0, 0],
        [1, 1],
        [2, 2],
      ]),
    ).toBeNull();
  });
});

describe('the best axis', () => {
  const foot: PointPx = [200, 300];

  // A ball d beside the foot and h above it leans by atan(d ÷ h). Tolerances: the staircase of the disc.
  it.each([
    [0, 110],
    [12, 110],
    [-25, 110],
    [30, 120],
  ])('of a ball %d px beside and %d px above the foot points at its middle', (beside, above) => {
    const mask = drawMask(400, 320, disc([200 + beside, 300 - above], 100));
    const axis = bestAxis(mask, foot);
    expect(Math.abs((axis?.tiltDeg ?? 99) - (180 / Math.PI) * Math.atan2(beside, above))).toBeLessThan(0.3);
    expect(axis?.symmetry).toBeGreaterThan(99);
  });

  // A symmetric plant, turned as a whole about the foot.
  it.each([-17, -4, 0, 2.5, 9])('of a plant that leans by %d° is that lean', (leanDeg) => {
    const lean = (leanDeg * Math.PI) / 180;
    const upright = (across: number, up: number) =>
      up > 0 && Math.hypot(across / 1.2, up - 70) < 85 + 10 * Math.cos(6 * Math.atan2(across, up - 70));
    const mask = drawMask(500, 320, (x, y) => {
      const [right, up] = [x - 250, 300 - y];
      return upright(
        right * Math.cos(lean) - up * Math.sin(lean),
        right * Math.sin(lean) + up * Math.cos(lean),
      );
    });
    const axis = bestAxis(mask, [250, 300]);
    expect(Math.abs((axis?.tiltDeg ?? 99) - leanDeg)).toBeLessThan(0.3);
    expect(axis?.symmetry).toBeGreaterThan(98.5);
  });

  it('is the upright where every line is as good', () => {
    const half = drawMask(400, 320, (x, y) => disc(foot, 150)(x, y) && y < 300);
    expect(bestAxis(half, foot)?.tiltDeg).toBe(0);
  });

  it('never has less symmetry than the upright', () => {
    const mask = drawMask(320, 280, (x, y) => {
      const angle = Math.atan2(y - 130, x - 150);
      return Math.hypot(x - 150, y - 130) < 80 + 9 * Math.cos(3 * angle + 0.7) && y < 200;
    });
    const silhouette = readSilhouette(mask);
    const measures = silhouette && measureSilhouette(silhouette, foundPlant(mask, rim(148, 200, 40)));
    expect(measures?.extras?.bestAxisSymmetry).toBeGreaterThan(measures?.symmetry ?? 100);
  });

  it('is not known when nothing stands above the rim, or without a pot', () => {
    expect(bestAxis(drawMask(200, 200, disc([100, 140], 30)), [100, 90])).toBeNull();
    const potless = extrasOfMask(drawMask(200, 200, disc([100, 100], 50)));
    expect([potless?.bestAxisTiltDeg, potless?.bestAxisSymmetry]).toEqual([null, null]);
  });
});

describe('the largest circle inside an outline', () => {
  // Source: JTS Topology Suite, MaximumInscribedCircleTest.java (locationtech/jts, commit 5b7fdbb5), tolerance 0.001.
  // Coordinates printed with fewer digits are held to those digits; where several centres are as good, the radius only.
  it.each<[string, PointPx[][], PointPx | null, number, number]>([
    [
      'triangle',
      [
        [
          [1, 1],
          [1, 7],
          [9, 1],
        ],
      ],
      [3, 3],
      2,
      0.002,
    ],
    [
      'flat triangle',
      [
        [
          [1, 1],
          [1, 9],
          [2, 2],
        ],
      ],
      [1.4852813742, 2.1715728753],
      0.4852813742,
      0.002,
    ],
    [
      'square',
      [
        [
          [100, 100],
          [200, 100],
          [200, 200],
          [100, 200],
        ],
      ],
      [150, 150],
      50,
      0.002,
    ],
    [
      'thin quad',
      [
        [
          [1, 2],
          [9, 3],
          [9, 1],
          [1, 1],
        ],
      ],
      [8.0622577483, 1.9377422517],
      0.9377422517,
      0.002,
    ],
    [
      'diamond',
      [
        [
          [150, 250],
          [50, 150],
          [150, 50],
          [250, 150],
        ],
      ],
      [150, 150],
      70.71,
      0.005,
    ],
    [
      'chevron',
      [
        [
          [1, 1],
          [6, 9],
          [3.7, 2.5],
          [9, 1],
        ],
      ],
      [2.82, 2.008],
      1.008,
      0.005,
    ],
    [
      'fat chevron',
      [
        [
          [1, 1],
          [6, 9],
          [5.9, 5],
          [9, 1],
        ],
      ],
      [4.7545, 3.0809],
      2.081,
      0.005,
    ],
    [
      'kite',
      [
        [
          [100, 0],
          [200, 200],
          [300, 200],
          [300, 100],
        ],
      ],
      [238.1966, 138.1966],
      61.8034,
      0.01,
    ],
    [
      'kite with a hole',
      [
        [
          [100, 0],
          [200, 200],
          [300, 200],
          [300, 100],
        ],
        [
          [200, 150],
          [200, 100],
          [260, 100],
        ],
      ],
      [257.47, 157.47],
      42.529,
      0.02,
    ],
    [
      'double kite',
      [
        [
          [1, 5],
          [5, 5],
          [9, 5],
          [5, 1],
        ],
      ],
      [5, 3.3431457505],
      1.6568542495,
      0.002,
    ],
  ])('is that of the JTS tests for a %s', (_, rings, centre, radius, tolerance) => {
    const circle = largestInnerCircle(rings, 1e-4);
    expect(Math.abs(circle.radius - radius)).toBeLessThan(tolerance);
    if (centre !== null) {
      // The radius is flat about the best centre: the centre is as good as the root of the precision.
      expect(Math.hypot(circle.centre[0] - centre[0], circle.centre[1] - centre[1])).toBeLessThan(0.1);
    }
  });

  it('is never larger than the circle round it', () => {
    const ring = around(60, (angle) => [(5 + Math.sin(3 * angle)) * Math.cos(angle), 4 * Math.sin(angle)]);
    expect(largestInnerCircle([ring], 0.01).radius).toBeLessThan(minimumCircumscribedCircle(ring).radius);
  });
});
