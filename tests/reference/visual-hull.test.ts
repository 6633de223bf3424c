import { describe, expect, it } from 'vitest';
import type { HullGrid } from '../../core/turned/hull-grid.ts';
import { hullBias, hullVolume, wadellSphericity } from '../../core/turned/hull-size.ts';
import { hullSurface, surfaceArea } from '../../core/turned/hull-surface.ts';
import { hullForScreen, hullOfScene, measureHull } from '../../core/turned/measure-hull.ts';
import { measureTurned } from '../../core/turned/measure-turned.ts';
import { turnedScene } from '../../core/turned/turned-scene.ts';
import type { NearCamera } from '../../core/turned/turned-view.ts';
import { ball, type Plant, sitting } from '../core/turned/leafy-plant.ts';

const RADIUS = 100;
const BALL_VOLUME = (4 / 3) * Math.PI * RADIUS ** 3;

function evenTurns(count: number, overDeg = 180): number[] {
  return Array.from({ length: count }, (_, k) => (overDeg * k) / count);
}

function hullOf(
  plant: Plant,
  turns: readonly number[],
  cubes: number,
  camera: NearCamera | null = null,
): HullGrid {
  const grid = hullOfScene(turnedScene(sitting(plant, turns, { camera, mmPerPx: 0.6 }), camera), cubes);
  if (grid === null) throw new Error('The views do not close round the plant.');
  return grid;
}

describe('the hull of a ball from k level directions', () => {
  // Source: closed form, every level slice is a regular 2k-gon round the circle: (2k/π) tan(π/2k).
  it.each([
    [2, 1.27324],
    [3, 1.102658],
    [4, 1.054786],
    [6, 1.023491],
    [8, 1.013052],
  ])('from %d directions is %d times the ball', (count, ratio) => {
    const scene = turnedScene(
      sitting(ball(RADIUS, [0, 0, 100]), evenTurns(count), { camera: null, mmPerPx: 0.6 }),
      null,
    );
    expect(
      hullBias(
        scene.views.map(({ sight }) => sight),
        RADIUS,
      ),
    ).toBeCloseTo(ratio, 5);
    expect(hullVolume(hullOfScene(scene, 100) as HullGrid) / BALL_VOLUME / ratio).toBeCloseTo(1, 2);
  });

  it('counts opposite views once from far away', () => {
    const turns = evenTurns(4, 360);
    const scene = turnedScene(
      sitting(ball(RADIUS, [0, 0, 100]), turns, { camera: null, mmPerPx: 0.6 }),
      null,
    );
    expect(
      hullBias(
        scene.views.map(({ sight }) => sight),
        RADIUS,
      ),
    ).toBeCloseTo(4 / Math.PI, 5);
    expect(
      Math.abs(hullVolume(hullOfScene(scene, 100) as HullGrid) / BALL_VOLUME / (4 / Math.PI) - 1),
    ).toBeLessThan(0.01);
  });

  // The closed form is for far cameras; under a near one the lines that touch the middle slice stand in for all slices.
  it.each([2, 4, 8])(
    'is within 1 %% of the stated bias before a camera at 1.2 m (%d directions)',
    (count) => {
      const camera = { distanceMm: 1200, heightMm: 150 };
      const scene = turnedScene(
        sitting(ball(RADIUS, [0, 0, 100]), evenTurns(count), { camera, mmPerPx: 0.6 }),
        camera,
      );
      const bias = hullBias(
        scene.views.map(({ sight }) => sight),
        RADIUS,
      ) as number;
      expect(Math.abs(hullVolume(hullOfScene(scene, 100) as HullGrid) / BALL_VOLUME / bias - 1)).toBeLessThan(
        0.01,
      );
    },
  );
});

describe('the solids of Steinmetz', () => {
  // Source: two perpendicular cylinders enclose 16 r³/3 with surface 16 r²; every face touches the ball, so surface = 3 V ÷ r.
  it('are met by two cylinders, 16 r³/3 and 16 r²', () => {
    const two = hullOf(ball(RADIUS, [0, 0, 100]), [0, 90], 100);
    expect(Math.abs(hullVolume(two) / ((16 / 3) * RADIUS ** 3) - 1)).toBeLessThan(0.01);
    expect(Math.abs(surfaceArea(hullSurface(two)) / (16 * RADIUS ** 2) - 1)).toBeLessThan(0.01);
  });

  // Source: three perpendicular cylinders enclose 8 (2 − √2) r³, surface 24 (2 − √2) r².
  it('are met by three cylinders, 8 (2 − √2) r³ and 24 (2 − √2) r²', () => {
    const three = withUprightCylinder(hullOf(ball(RADIUS, [0, 0, 100]), [0, 90], 100));
    expect(Math.abs(hullVolume(three) / (8 * (2 - Math.SQRT2) * RADIUS ** 3) - 1)).toBeLessThan(0.01);
    expect(
      Math.abs(surfaceArea(hullSurface(three)) / (24 * (2 - Math.SQRT2) * RADIUS ** 2) - 1),
    ).toBeLessThan(0.01);
  });
});

/** No level view shows the plant from above, so the third cylinder is cut from the grid by its formula. */
function withUprightCylinder(grid: HullGrid): HullGrid {
  const { across, high, side, firstU, firstV } = grid;
  const depths = grid.depths.map((depth, at) => {
    const i = Math.floor(at / high / across);
    const j = Math.floor(at / high) % across;
    return Math.min(depth, RADIUS - Math.hypot(firstU + i * side, firstV + j * side));
  });
  return { ...grid, depths };
}

describe('the hull of an oval plant', () => {
  // Source: bounds of the ratio over all headings, from polygons round an ellipse, computed with another program.
  it.each([
    [0.8, 2, 1.2737, 1.3114],
    [0.8, 4, 1.0585, 1.0612],
    [0.8, 8, 1.0139, 1.0152],
    [0.6, 2, 1.2703, 1.4444],
    [0.6, 4, 1.072, 1.0791],
    [0.6, 8, 1.0176, 1.0186],
  ])('1 : %d from %d directions lies between %d and %d times its volume', (oval, count, low, high) => {
    for (const heading of [0, 20, 45, 70]) {
      const [cos, sin] = [Math.cos((heading * Math.PI) / 180), Math.sin((heading * Math.PI) / 180)];
      const plant: Plant = {
        radiusMm: RADIUS,
        parts: [
          {
            middle: [0, 0, 100],
            halfAxes: [RADIUS, oval * RADIUS, RADIUS],
            axes: [
              [cos, sin, 0],
              [-sin, cos, 0],
              [0, 0, 1],
            ],
          },
        ],
      };
      const ratio = hullVolume(hullOf(plant, evenTurns(count), 72)) / (oval * BALL_VOLUME);
      expect(ratio).toBeGreaterThan(0.99 * low);
      expect(ratio).toBeLessThan(1.01 * high);
    }
  });

  // Source: Cauchy and Crofton, perimeter = π × mean width = 2π × mean reach; perimeter of an ellipse by Ramanujan (1914).
  it('has a mean reach that gives its perimeter', () => {
    const [a, b] = [RADIUS, 0.8 * RADIUS];
    const plant: Plant = {
      radiusMm: RADIUS,
      parts: [
        {
          middle: [0, 0, 100],
          halfAxes: [a, b, RADIUS],
          axes: [
            [1, 0, 0],
            [0, 1, 0],
            [0, 0, 1],
          ],
        },
      ],
    };
    const { plan } = measureTurned(sitting(plant, evenTurns(4), { camera: null, mmPerPx: 0.6 }), {
      camera: null,
      light: null,
      fixedCamera: true,
    });
    const mean = plan.reach.reduce((sum, { mm }) => sum + (mm ?? Number.NaN), 0) / plan.reach.length;
    const perimeter = Math.PI * (3 * (a + b) - Math.sqrt((3 * a + b) * (a + 3 * b)));
    expect(Math.abs((2 * Math.PI * mean) / perimeter - 1)).toBeLessThan(0.01);
  });
});

describe('sphericity', () => {
  // Source: Wadell (1935); a cube has (π/6)^⅓ = 0.806.
  it('of a cube is 0.806', () => {
    expect(wadellSphericity(1, 6)).toBeCloseTo(0.806, 3);
  });

  // Every face of the hull of a ball touches it, so surface = 3 V ÷ r and sphericity = bias^−⅓.
  it.each([2, 4, 8])('of a ball’s hull from %d directions is as stated', (count) => {
    const scene = turnedScene(
      sitting(ball(RADIUS, [0, 0, 100]), evenTurns(count), { camera: null, mmPerPx: 0.6 }),
      null,
    );
    const hull = measureHull(scene);
    expect(Math.abs((hull?.sphericity ?? 0) - (hull?.sphericityOfABall ?? 1))).toBeLessThan(0.007);
    expect(hull?.radiusMm).toBeCloseTo(RADIUS, 0);
    expect(hull?.outOfRoundMm).toBeLessThan(0.01 * RADIUS);
  });
});

describe('the hull on the screen', () => {
  it('is a closed surface of at most 20 000 triangles, seen from outside', () => {
    const scene = turnedScene(
      sitting(ball(RADIUS, [0, 0, 100]), evenTurns(4), { camera: null, mmPerPx: 0.6 }),
      null,
    );
    const surface = hullForScreen(scene);
    if (surface === null) throw new Error('no surface');
    const { corners, triangles } = surface;
    expect(triangles.length / 3).toBeGreaterThan(5000);
    expect(triangles.length / 3).toBeLessThanOrEqual(20_000);
    // Each edge is walked once in each direction.
    const edges = new Set<number>();
    const count = corners.length / 3;
    let volume = 0;
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]] as [number, number, number];
      for (const [from, to] of [
        [a, b],
        [b, c],
        [c, a],
      ] as const) {
        expect(edges.has(from * count + to)).toBe(false);
        edges.add(from * count + to);
      }
      const at = (corner: number) =>
        [0, 1, 2].map((k) => corners[3 * corner + k] as number) as [number, number, number];
      const [p, q, r] = [at(a), at(b), at(c)];
      volume +=
        (p[0] * (q[1] * r[2] - q[2] * r[1]) +
          p[1] * (q[2] * r[0] - q[0] * r[2]) +
          p[2] * (q[0] * r[1] - q[1] * r[0])) /
        6;
    }
    for (const edge of edges) expect(edges.has((edge % count) * count + Math.floor(edge / count))).toBe(true);
    expect(volume / (BALL_VOLUME * 1.054786)).toBeCloseTo(1, 1);
    expect(volume).toBeGreaterThan(0);
  });

  it('is none from one direction', () => {
    const scene = turnedScene(
      sitting(ball(RADIUS, [0, 0, 100]), [0, 180], { camera: null, mmPerPx: 2 }),
      null,
    );
    expect(hullForScreen(scene)).toBeNull();
    expect(measureHull(scene)).toBeNull();
  });
});
