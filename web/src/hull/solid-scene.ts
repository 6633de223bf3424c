import { radOf, turnBetween } from '../../../core/turned/circular-statistics.ts';
import type { HullSolid } from '../../../server/schemas/turned.ts';
import { smoothNormals } from './surface-normals.ts';
import type { Direction } from './turning.ts';

/** How a triangle's corner is coloured. */
export type Tone = 'even' | 'weak' | 'heavy' | 'pot';

/** Everything that is shaded, in the solid's own unit, and the room it needs. */
export interface SolidScene {
  /** u, v, h of each corner, one after another. */
  readonly corners: Float32Array;
  /** Three corner numbers a triangle, anticlockwise seen from outside. */
  readonly triangles: Uint32Array;
  /** Outward direction of the surface at each corner, length 1, one after another. */
  readonly normals: Float32Array;
  /** One a corner. */
  readonly tones: readonly Tone[];
  /** Middle of the picture. */
  readonly middle: Direction;
  /** Half the picture's side. */
  readonly reach: number;
  /** Height of what the pot stands on. */
  readonly footH: number;
  /** Radius of the turntable. */
  readonly tableRadius: number;
}

/** A marked side is a quarter of the plant. */
const HALF_SIDE_DEG = 45;
/** The pot is drawn, not measured: so high and so narrow at its foot, in rim radii. */
const POT = { height: 1.5, foot: 0.72, sides: 40 } as const;

/** The hull with its marked sides, on a pot as wide as the rim. */
export function solidScene(solid: HullSolid): SolidScene {
  const hull = boundsOf(solid.corners);
  const pot = solid.rimRadius === null ? null : potOf(solid.rimRadius);
  const hullCorners = solid.corners.length / 3;
  const footH = pot === null ? Math.min(hull.low, 0) : -POT.height * (solid.rimRadius ?? 0);
  const tableRadius = 1.1 * Math.max(hull.out, solid.rimRadius ?? 0);
  // A little below the middle of the plant: the front of the turntable and its names need room.
  const middleH = (Math.max(hull.high, 0) + footH) / 2 - 0.12 * tableRadius;
  const corners = Float32Array.from([...solid.corners, ...(pot?.corners ?? [])]);
  const triangles = Uint32Array.from([
    ...solid.triangles,
    ...(pot?.triangles ?? []).map((corner) => corner + hullCorners),
  ]);
  return {
    corners,
    triangles,
    normals: smoothNormals(corners, triangles),
    tones: [
      ...Array.from({ length: hullCorners }, (_, k) => toneOf(solid, k)),
      ...Array.from({ length: (pot?.corners.length ?? 0) / 3 }, (): Tone => 'pot'),
    ],
    middle: [0, 0, middleH],
    // Room for the light's rays at the sides, a tall plant on top, and the mark's name below, at the first look.
    reach: Math.max(
      1.22 * tableRadius,
      1.12 * (hull.high - middleH),
      0.95 * (middleH - footH) + 0.55 * tableRadius,
    ),
    footH,
    tableRadius,
  };
}

function toneOf({ corners, weakAzimuthDeg, heavyAzimuthDeg }: HullSolid, corner: number): Tone {
  const [u, v] = [corners[3 * corner] ?? 0, corners[3 * corner + 1] ?? 0];
  const azimuth = (Math.atan2(v, u) * 180) / Math.PI;
  const on = (side: number | null) => side !== null && Math.abs(turnBetween(azimuth, side)) <= HALF_SIDE_DEG;
  if (on(weakAzimuthDeg)) return 'weak';
  return on(heavyAzimuthDeg) ? 'heavy' : 'even';
}

function boundsOf(corners: readonly number[]): { out: number; low: number; high: number } {
  let [out, low, high] = [0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let k = 0; k + 2 < corners.length; k += 3) {
    out = Math.max(out, Math.hypot(corners[k] ?? 0, corners[k + 1] ?? 0));
    low = Math.min(low, corners[k + 2] ?? 0);
    high = Math.max(high, corners[k + 2] ?? 0);
  }
  return { out, low, high };
}

/** A cut cone with its soil; rim and soil have corners of their own, so that the edge between them stays sharp. */
function potOf(rimRadius: number): { corners: number[]; triangles: number[] } {
  const corners: number[] = [];
  const triangles: number[] = [];
  for (let k = 0; k < POT.sides; k++) {
    const azimuth = radOf((360 * k) / POT.sides);
    for (const [radius, h] of [
      [rimRadius, 0],
      [POT.foot * rimRadius, -POT.height * rimRadius],
      [rimRadius, 0],
    ] as const) {
      corners.push(radius * Math.cos(azimuth), radius * Math.sin(azimuth), h);
    }
    const [rim, foot, soil] = [3 * k, 3 * k + 1, 3 * k + 2];
    const next = (corner: number) => (corner + 3) % (3 * POT.sides);
    triangles.push(rim, foot, next(foot), rim, next(foot), next(rim), soil, next(soil), 3 * POT.sides);
  }
  corners.push(0, 0, 0);
  return { corners, triangles };
}
