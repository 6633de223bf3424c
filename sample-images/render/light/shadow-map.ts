import type { Mesh } from '../geometry/mesh.ts';
import { cross, dot, squareTo, type Vec3 } from '../geometry/vector.ts';
import type { Lamp } from './lamps.ts';

/** What one lamp reaches: for a grid square to its direction, how near to the lamp the first surface is. */
export interface ShadowMap {
  readonly lamp: Lamp;
  readonly size: number;
  readonly cellsPerMm: number;
  /**
   * Three rows of four: they turn a point (x, y, z, 1) into its distance towards the lamp, mm, and its column and
   * row on the grid. One flat array, because every lit place reads it.
   */
  readonly frame: Float64Array;
  /** Distance towards the lamp of its nearest surface, mm from the centre; very low where nothing stands. */
  readonly nearest: Float32Array;
}

/** Draws the scene as the lamp sees it (shadow map, Williams 1978). */
export function shadowMap(mesh: Mesh, lamp: Lamp, bounds: Bounds, size: number): ShadowMap {
  const side = squareTo([1, 0.13, 0], lamp.toward);
  const other = cross(lamp.toward, side);
  const cellsPerMm = size / (2 * bounds.radiusMm);
  const nearest = new Float32Array(size * size).fill(-1e9);
  const frame = Float64Array.of(
    ...frameRow(lamp.toward, 1, bounds.centre, 0),
    ...frameRow(side, cellsPerMm, bounds.centre, size / 2),
    ...frameRow(other, cellsPerMm, bounds.centre, size / 2),
  );
  const map = { lamp, size, cellsPerMm, frame, nearest };
  const seen = seenFrom(mesh, map);
  const { corners } = mesh;
  for (let corner = 0; corner < corners.length; corner += 3) {
    const a = (corners[corner] as number) * 3;
    const b = (corners[corner + 1] as number) * 3;
    const c = (corners[corner + 2] as number) * 3;
    drawTriangle(nearest, size, seen, a, b, c);
  }
  return map;
}

export interface Bounds {
  readonly centre: Vec3;
  readonly radiusMm: number;
}

/** A ball that holds every point of the mesh. */
export function meshBounds(mesh: Mesh): Bounds {
  const low = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  const high = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let at = 0; at < mesh.positions.length; at++) {
    const value = mesh.positions[at] as number;
    low[at % 3] = Math.min(low[at % 3] as number, value);
    high[at % 3] = Math.max(high[at % 3] as number, value);
  }
  const centre = low.map((value, axis) => (value + (high[axis] as number)) / 2) as unknown as Vec3;
  let radiusMm = 1;
  for (let at = 0; at < mesh.positions.length; at += 3) {
    const x = (mesh.positions[at] as number) - centre[0];
    const y = (mesh.positions[at + 1] as number) - centre[1];
    const z = (mesh.positions[at + 2] as number) - centre[2];
    radiusMm = Math.max(radiusMm, Math.hypot(x, y, z));
  }
  return { centre, radiusMm: radiusMm * 1.01 };
}

function frameRow(direction: Vec3, factor: number, centre: Vec3, offset: number): number[] {
  return [
    direction[0] * factor,
    direction[1] * factor,
    direction[2] * factor,
    offset - factor * dot(direction, centre),
  ];
}

/** Grid column, grid row and distance towards the lamp of every point of the mesh. */
function seenFrom(mesh: Mesh, map: ShadowMap): Float64Array {
  const { positions } = mesh;
  const seen = new Float64Array(positions.length);
  const [tx, ty, tz, t0, sx, sy, sz, s0, ox, oy, oz, o0] = map.frame as unknown as number[] as Twelve;
  for (let at = 0; at < positions.length; at += 3) {
    const x = positions[at] as number;
    const y = positions[at + 1] as number;
    const z = positions[at + 2] as number;
    seen[at] = sx * x + sy * y + sz * z + s0;
    seen[at + 1] = ox * x + oy * y + oz * z + o0;
    seen[at + 2] = tx * x + ty * y + tz * z + t0;
  }
  return seen;
}

type Twelve = [...Four, ...Four, ...Four];
type Four = [number, number, number, number];

function drawTriangle(
  nearest: Float32Array,
  size: number,
  seen: Float64Array,
  a: number,
  b: number,
  c: number,
): void {
  const ax = seen[a] as number;
  const ay = seen[a + 1] as number;
  const bx = seen[b] as number;
  const by = seen[b + 1] as number;
  const cx = seen[c] as number;
  const cy = seen[c + 1] as number;
  const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  if (Math.abs(area) < 1e-9) return;
  const az = seen[a + 2] as number;
  const slopeB = ((seen[b + 2] as number) - az) / area;
  const slopeC = ((seen[c + 2] as number) - az) / area;
  const left = Math.max(0, Math.ceil(Math.min(ax, bx, cx) - 0.5));
  const right = Math.min(size - 1, Math.floor(Math.max(ax, bx, cx) - 0.5));
  const top = Math.max(0, Math.ceil(Math.min(ay, by, cy) - 0.5));
  const bottom = Math.min(size - 1, Math.floor(Math.max(ay, by, cy) - 0.5));
  const sign = area > 0 ? 1 : -1;
  for (let y = top; y <= bottom; y++) {
    const dy = y + 0.5 - ay;
    for (let x = left; x <= right; x++) {
      const dx = x + 0.5 - ax;
      const weightB = dx * (cy - ay) - dy * (cx - ax);
      const weightC = dy * (bx - ax) - dx * (by - ay);
      if (weightB * sign < 0 || weightC * sign < 0 || (area - weightB - weightC) * sign < 0) continue;
      const near = az + weightB * slopeB + weightC * slopeC;
      if (near > (nearest[y * size + x] as number)) nearest[y * size + x] = near;
    }
  }
}

function at(values: Float64Array, index: number): number {
  return values[index] as number;
}

/** A surface this close behind another one is taken for the same, mm: else every leaf would shade itself. */
const OWN_DEPTH_MM = 2.2;

/**
 * Whether light of the lamp reaches a point: 1 or 0.
 *
 * `shiftX`, `shiftY` in [-1, 1] scatter the look-up, the more the further the blocker is, so that the edges of
 * many lamps' shadows melt into one another.
 */
export function reaches(
  map: ShadowMap,
  x: number,
  y: number,
  z: number,
  shiftX: number,
  shiftY: number,
): number {
  const { frame, size, nearest } = map;
  const own = at(frame, 0) * x + at(frame, 1) * y + at(frame, 2) * z + at(frame, 3) + OWN_DEPTH_MM;
  const u = at(frame, 4) * x + at(frame, 5) * y + at(frame, 6) * z + at(frame, 7);
  const v = at(frame, 8) * x + at(frame, 9) * y + at(frame, 10) * z + at(frame, 11);
  let scatter = 1;
  if (map.lamp.key) {
    const column = Math.floor(u);
    const row = Math.floor(v);
    if (column < 0 || row < 0 || column >= size || row >= size) return 1;
    const gap = (nearest[row * size + column] as number) - own;
    scatter = gap > 0 ? 0.8 + Math.min(30, 0.09 * gap * map.cellsPerMm) : 3.8;
  }
  const column = Math.floor(u + shiftX * scatter);
  const row = Math.floor(v + shiftY * scatter);
  if (column < 0 || row < 0 || column >= size || row >= size) return 1;
  return (nearest[row * size + column] as number) > own ? 0 : 1;
}
