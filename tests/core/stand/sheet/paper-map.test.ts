import { describe, expect, it } from 'vitest';
import { arrowTurn, lightOfArrow } from '../../../../core/stand/sheet/light-arrow.ts';
import {
  centreOfCircle,
  fitOf,
  mapPoint,
  type PaperPair,
  paperMap,
  slopesOfMap,
} from '../../../../core/stand/sheet/paper-map.ts';
import { sheetGeometry } from '../../../../core/stand/sheet/sheet-geometry.ts';
import { mapOfScene, SCENE } from './photographed-sheet.ts';

const geometry = sheetGeometry('A4');
const tilted = mapOfScene(
  { ...SCENE, distanceMm: 800, tiltDeg: 40, tiltAboutDeg: 20, turnDeg: 30 },
  geometry,
);

function pairsUnder(map: typeof tilted, count: number): PaperPair[] {
  return geometry.marks
    .slice(0, count)
    .map(({ centreMm }) => ({ mm: centreMm, px: mapPoint(map, centreMm), doubtPx: 0.1 }));
}

describe('the map from paper to photo', () => {
  it.each([4, 5])('is perspective by %i marks, and exact when they are', (count) => {
    const map = paperMap(pairsUnder(tilted, count));
    if (map === null) throw new Error('no map');
    for (const corner of [
      [0, 0],
      [210, 0],
      [0, 297],
      [210, 297],
    ] as const) {
      const [x, y] = mapPoint(tilted, corner);
      const [u, v] = mapPoint(map, corner);
      expect(Math.hypot(u - x, v - y)).toBeLessThan(1e-3);
    }
  });

  it('is affine by three marks, a similarity by two or by three in a row, none by one', () => {
    expect(fitOf(pairsUnder(tilted, 3))).toBe('affine');
    expect(fitOf(pairsUnder(tilted, 2))).toBe('similarity');
    expect(fitOf(pairsUnder(tilted, 5).filter((_, k) => [1, 2, 4].includes(k)))).toBe('similarity');
    expect(fitOf(pairsUnder(tilted, 1))).toBeNull();
    expect(paperMap(pairsUnder(tilted, 1))).toBeNull();
  });

  it('has the slopes that small steps show', () => {
    const [a, b, c, d] = slopesOfMap(tilted, [60, 200]);
    const [x, y] = mapPoint(tilted, [60, 200]);
    const [right, down] = [mapPoint(tilted, [60.001, 200]), mapPoint(tilted, [60, 200.001])];
    expect((right[0] - x) / 0.001).toBeCloseTo(a, 4);
    expect((down[0] - x) / 0.001).toBeCloseTo(b, 4);
    expect((right[1] - y) / 0.001).toBeCloseTo(c, 4);
    expect((down[1] - y) / 0.001).toBeCloseTo(d, 4);
  });
});

describe('the ellipse of a tilted circle', () => {
  it('has its centre off the picture of the circle’s centre, as a straight-on tilt shows by hand', () => {
    // Tilted by θ about the level line through the middle: the circle's ends lie at ±R cos θ ÷ (Z ∓ R sin θ).
    const [f, Z, R, tilt] = [1200, 800, 32, (40 * Math.PI) / 180];
    const map = mapOfScene({ ...SCENE, distanceMm: Z, tiltDeg: 40, tiltAboutDeg: 0 }, geometry);
    const end = (side: number) => (f * side * R * Math.cos(tilt)) / (Z + side * R * Math.sin(tilt));
    const middle = (end(1) + end(-1)) / 2;
    const [x, y] = centreOfCircle(map, [105, 148.5], R);
    expect(x).toBeCloseTo(800, 6);
    expect(y - 600).toBeCloseTo(middle, 6);
    expect(Math.abs(middle)).toBeGreaterThan(0.9);
  });
});

describe('the light arrow', () => {
  it.each([
    [0, 'above', 'behind-plant'],
    [90, 'right', 'right'],
    [180, null, 'behind-camera'],
    [-90, 'left', 'left'],
  ] as const)('turned by %i° means %s on a backdrop and %s on the bench', (turnDeg, onBackdrop, onBench) => {
    const turn = arrowTurn(geometry, mapOfScene({ ...SCENE, turnDeg }, geometry));
    expect(Math.abs(Math.abs(turn) - Math.abs(turnDeg))).toBeLessThan(1e-6);
    expect(lightOfArrow(turn, 'backdrop')).toBe(onBackdrop);
    expect(lightOfArrow(turn, 'bench')).toBe(onBench);
  });
});
