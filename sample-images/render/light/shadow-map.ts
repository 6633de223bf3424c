import type { Mesh } from '../geometry/mesh.ts';
import { cross, squareTo, type Vec3 } from '../geometry/vector.ts';
import type { Lamp } from './lamps.ts';

/** What one lamp reaches: for a grid square to its direction, how near to the lamp the first surface is. */
export interface ShadowMap {
  readonly lamp: Lamp;
  readonly side: Vec3;
  readonly other: Vec3;
  readonly centre: Vec3;
  readonly size: number;
  readonly cellsPerMm: number;
  /** Distance towards the lamp of its nearest surface, mm from the centre; very low where nothing stands. */
  readonly nearest: Float32Array;
}

/** Draws the scene as the lamp sees it (shadow map, Williams 1978). */
export function shadowMap(mesh: Mesh, lamp: Lamp, bounds: Bounds, size: number): ShadowMap {
  const side = squareTo([1, 0.13, 0], lamp.toward);
  const other = cross(lamp.toward, side);
  const cellsPerMm = size / (2 * bounds.radiusMm);
  const nearest = new Float32Array(size * size).fill(-1e9);
  const map = { lamp, side, other, centre: bounds.centre, size, cellsPerMm, nearest };
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

function seenFrom(mesh: Mesh, map: ShadowMap): Float64Array {
  const { positions } = mesh;
  const seen = new Float64Array(positions.length);
  const { side, other, centre } = map;
  const toward = map.lamp.toward;
  const half = map.size / 2;
  for (let at = 0; at < positions.length; at += 3) {
    const x = (positions[at] as number) - centre[0];
    const y = (positions[at + 1] as number) - centre[1];
    const z = (positions[at + 2] as number) - centre[2];
    seen[at] = half + map.cellsPerMm * (x * side[0] + y * side[1] + z * side[2]);
    seen[at + 1] = half + map.cellsPerMm * (x * other[0] + y * other[1] + z * other[2]);
    seen[at + 2] = x * toward[0] + y * toward[1] + z * toward[2];
  }
  return seen;
}

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
  const { side, other, centre, size, nearest } = map;
  const toward = map.lamp.toward;
  const px = x - centre[0];
  const py = y - centre[1];
  const pz = z - centre[2];
  const own = px * toward[0] + py * toward[1] + pz * toward[2] + 2.2;
  const u = size / 2 + map.cellsPerMm * (px * side[0] + py * side[1] + pz * side[2]);
  const v = size / 2 + map.cellsPerMm * (px * other[0] + py * other[1] + pz * other[2]);
  let column = Math.floor(u);
  let row = Math.floor(v);
  if (column < 0 || row < 0 || column >= size || row >= size) return 1;
  const gap = (nearest[row * size + column] as number) - own;
  const scatter = 0.8 + (gap > 0 ? Math.min(30, 0.09 * gap * map.cellsPerMm) : map.lamp.key ? 3 : 1);
  column = Math.floor(u + shiftX * scatter);
  row = Math.floor(v + shiftY * scatter);
  if (column < 0 || row < 0 || column >= size || row >= size) return 1;
  return (nearest[row * size + column] as number) > own ? 0 : 1;
}
