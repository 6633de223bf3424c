import { smoothStep } from '../geometry/keyframes.ts';
import { smoothNoise } from '../geometry/seeded-random.ts';
import { along, unit, type Vec3 } from '../geometry/vector.ts';

/** Cloth behind the plant and the bench that it stands on. Colours are linear reflectances. */
export interface BackdropSpec {
  /** Distance of the cloth behind the plant's axis, mm. */
  readonly wallMm: number;
  readonly wallColour: Vec3;
  /** How strongly the cloth hangs in folds, 0 to 1. */
  readonly folds: number;
  readonly benchColour: Vec3;
  readonly benchGrain: 'cloth' | 'wood' | 'matting' | 'slate';
  /** Radius of the bend between bench and cloth, mm: large for one sweeping sheet. */
  readonly bendMm: number;
  readonly seed: number;
}

/** What a line of sight meets: where, how it faces and its colour. */
export interface Backing {
  readonly point: Vec3;
  readonly normal: Vec3;
  readonly colour: Vec3;
}

/** Follows a line of sight to the bench, the bend or the cloth, whichever it meets. */
export function backingAt(eye: Vec3, sight: Vec3, backdrop: BackdropSpec, benchMm: number): Backing {
  const { bendMm, wallMm } = backdrop;
  const toBench = sight[2] < 0 ? (benchMm - eye[2]) / sight[2] : Number.POSITIVE_INFINITY;
  const onBench = along(eye, sight, toBench);
  if (onBench[1] < wallMm - bendMm) return benchBacking(onBench, backdrop);
  const onWall = along(eye, sight, (wallMm - eye[1]) / sight[1]);
  if (onWall[2] > benchMm + bendMm) return wallBacking(onWall, backdrop);
  // The bend is a quarter of a level cylinder that touches bench and cloth.
  const dy = eye[1] - (wallMm - bendMm);
  const dz = eye[2] - (benchMm + bendMm);
  const square = sight[1] ** 2 + sight[2] ** 2;
  const half = dy * sight[1] + dz * sight[2];
  const far =
    (-half + Math.sqrt(Math.max(0, half * half - square * (dy * dy + dz * dz - bendMm * bendMm)))) / square;
  const point = along(eye, sight, far);
  const normal: Vec3 = [0, (wallMm - bendMm - point[1]) / bendMm, (benchMm + bendMm - point[2]) / bendMm];
  const share = smoothStep(0, 1, Math.min(1, Math.max(0, 1 - normal[2])));
  const bench = benchBacking(point, backdrop);
  const wall = wallBacking(point, backdrop);
  const mixed = [0, 1, 2].map(
    (band) => (bench.colour[band] as number) * (1 - share) + (wall.colour[band] as number) * share,
  );
  return { point, normal: unit(normal), colour: mixed as unknown as Vec3 };
}

function wallBacking(point: Vec3, backdrop: BackdropSpec): Backing {
  const { seed, folds, wallColour } = backdrop;
  const [x, , z] = point;
  const sway = x + 14 * smoothNoise(z / 260, 3, seed);
  const slope =
    folds *
    (0.34 * smoothNoise(sway / 95, z / 900, seed + 1) +
      0.2 * smoothNoise(sway / 38, z / 500, seed + 2) +
      0.12 * smoothNoise(x / 60, z / 60, seed + 3));
  const weave =
    1 + 0.035 * smoothNoise(x * 0.9, z * 0.9, seed + 4) + 0.03 * smoothNoise(x / 7, z / 7, seed + 5);
  return { point, normal: unit([slope, -1, 0.25 * slope]), colour: tinted(wallColour, weave) };
}

function benchBacking(point: Vec3, backdrop: BackdropSpec): Backing {
  const { seed, benchColour, benchGrain } = backdrop;
  const [x, y] = point;
  if (benchGrain === 'wood') {
    const board = Math.floor((y + 2000) / 92);
    const inBoard = (y + 2000) / 92 - board;
    const gap = smoothStep(0.0, 0.025, inBoard) * smoothStep(1, 0.975, inBoard);
    const rings = smoothNoise(
      x / 260 + board * 7,
      (y + 9 * smoothNoise(x / 90, board, seed)) / 5,
      seed + board,
    );
    const fibre = smoothNoise(x / 30, y / 1.1, seed + 9);
    const shade =
      (1 + 0.17 * rings + 0.09 * fibre + 0.12 * smoothNoise(board, 5, seed)) * (0.25 + 0.75 * gap);
    return { point, normal: [0, 0, 1], colour: tinted(benchColour, shade) };
  }
  const grain = benchGrain === 'matting' ? 0.2 : benchGrain === 'slate' ? 0.1 : 0.04;
  const fine = smoothNoise(x / 1.6, y / 1.6, seed + 6) + 0.6 * smoothNoise(x / 6, y / 6, seed + 7);
  const broad = benchGrain === 'cloth' ? 0.02 : 0.09;
  const shade = 1 + grain * fine + broad * smoothNoise(x / 70, y / 70, seed + 8);
  const ripple = backdrop.folds * 0.05 * smoothNoise(x / 120, y / 50, seed + 9);
  return { point, normal: unit([ripple, ripple, 1]), colour: tinted(benchColour, shade) };
}

function tinted(colour: Vec3, factor: number): Vec3 {
  return [colour[0] * factor, colour[1] * factor, colour[2] * factor];
}
