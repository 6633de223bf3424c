import type { Mesh } from '../geometry/mesh.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Visible } from './rasterise.ts';
import type { Surface } from './surface.ts';

/** A place about to be lit: where, which way it faces, from where it is seen. */
export interface Place {
  x: number;
  y: number;
  z: number;
  nx: number;
  ny: number;
  nz: number;
  vx: number;
  vy: number;
  vz: number;
}

/** Shares of the triangle's corners at a sample, corrected for depth. */
export function cornerWeights(mesh: Mesh, visible: Visible, triangle: number, x: number, y: number): Vec3 {
  const { projected } = visible;
  const a = (mesh.corners[triangle * 3] as number) * 3;
  const b = (mesh.corners[triangle * 3 + 1] as number) * 3;
  const c = (mesh.corners[triangle * 3 + 2] as number) * 3;
  const ax = projected[a] as number;
  const ay = projected[a + 1] as number;
  const bx = (projected[b] as number) - ax;
  const by = (projected[b + 1] as number) - ay;
  const cx = (projected[c] as number) - ax;
  const cy = (projected[c + 1] as number) - ay;
  const area = bx * cy - by * cx;
  const shareB = ((x - ax) * cy - (y - ay) * cx) / area;
  const shareC = ((y - ay) * bx - (x - ax) * by) / area;
  const nearA = Math.max(0, 1 - shareB - shareC) * (projected[a + 2] as number);
  const nearB = Math.max(0, shareB) * (projected[b + 2] as number);
  const nearC = Math.max(0, shareC) * (projected[c + 2] as number);
  const sum = nearA + nearB + nearC;
  return [nearA / sum, nearB / sum, nearC / sum];
}

export function interpolate(values: readonly number[], mesh: Mesh, triangle: number, weights: Vec3): Vec3 {
  const a = (mesh.corners[triangle * 3] as number) * 3;
  const b = (mesh.corners[triangle * 3 + 1] as number) * 3;
  const c = (mesh.corners[triangle * 3 + 2] as number) * 3;
  const [atA, atB, atC] = weights;
  return [
    atA * (values[a] as number) + atB * (values[b] as number) + atC * (values[c] as number),
    atA * (values[a + 1] as number) + atB * (values[b + 1] as number) + atC * (values[c + 1] as number),
    atA * (values[a + 2] as number) + atB * (values[b + 2] as number) + atC * (values[c + 2] as number),
  ];
}

export function placeOnTriangle(place: Place, mesh: Mesh, triangle: number, weights: Vec3): void {
  [place.x, place.y, place.z] = interpolate(mesh.positions, mesh, triangle, weights);
  const [nx, ny, nz] = interpolate(mesh.normals, mesh, triangle, weights);
  const size = Math.hypot(nx, ny, nz) || 1;
  place.nx = nx / size;
  place.ny = ny / size;
  place.nz = nz / size;
}

export function flip(place: Place): void {
  place.nx = -place.nx;
  place.ny = -place.ny;
  place.nz = -place.nz;
}

function edge(values: readonly number[], from: number, to: number): Vec3 {
  return [
    (values[to] as number) - (values[from] as number),
    (values[to + 1] as number) - (values[from + 1] as number),
    (values[to + 2] as number) - (values[from + 2] as number),
  ];
}

export function faceNormal(mesh: Mesh, triangle: number): Vec3 {
  const a = (mesh.corners[triangle * 3] as number) * 3;
  const u = edge(mesh.positions, a, (mesh.corners[triangle * 3 + 1] as number) * 3);
  const v = edge(mesh.positions, a, (mesh.corners[triangle * 3 + 2] as number) * 3);
  return [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
}

/** Leans the normal by the surface's slopes along its pattern coordinates (bump mapping, Blinn 1978). */
export function tilt(place: Place, surface: Surface, mesh: Mesh, triangle: number): void {
  const a = (mesh.corners[triangle * 3] as number) * 3;
  const b = (mesh.corners[triangle * 3 + 1] as number) * 3;
  const c = (mesh.corners[triangle * 3 + 2] as number) * 3;
  const u = edge(mesh.positions, a, b);
  const v = edge(mesh.positions, a, c);
  const [ux, uy] = edge(mesh.coordinates, a, b);
  const [wx, wy] = edge(mesh.coordinates, a, c);
  const area = ux * wy - uy * wx;
  if (Math.abs(area) < 1e-9) return;
  const axisX: Vec3 = [
    (u[0] * wy - v[0] * uy) / area,
    (u[1] * wy - v[1] * uy) / area,
    (u[2] * wy - v[2] * uy) / area,
  ];
  const axisY: Vec3 = [
    (v[0] * ux - u[0] * wx) / area,
    (v[1] * ux - u[1] * wx) / area,
    (v[2] * ux - u[2] * wx) / area,
  ];
  const perX = surface.slopeX / (Math.hypot(...axisX) || 1);
  const perY = surface.slopeY / (Math.hypot(...axisY) || 1);
  const nx = place.nx - perX * axisX[0] - perY * axisY[0];
  const ny = place.ny - perX * axisX[1] - perY * axisY[1];
  const nz = place.nz - perX * axisX[2] - perY * axisY[2];
  const size = Math.hypot(nx, ny, nz) || 1;
  place.nx = nx / size;
  place.ny = ny / size;
  place.nz = nz / size;
}
