import type { Mesh, Part } from '../geometry/mesh.ts';
import { latticeChance } from '../geometry/seeded-random.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { reaches, type ShadowMap } from '../light/shadow-map.ts';
import type { Pinhole } from './camera.ts';
import type { Visible } from './rasterise.ts';
import { blankSurface, paintSurface, type Surface } from './surface.ts';

/** Light sent to the camera, linear; three numbers that the next call overwrites. */
export type Radiance = Float64Array;

/** A place about to be lit: where, which way it faces, from where it is seen. */
interface Place {
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

/** Light that leaves crowded leaves has met other leaves: what stays in the dark is a deep green. */
const LEAF_GLOW: Vec3 = [0.016, 0.03, 0.008];

export interface Shader {
  /** Light from a triangle, seen at a sample of the photo (in samples). */
  readonly triangle: (triangle: number, sampleX: number, sampleY: number) => Radiance;
  /** Light that falls on any matt place: times its colour, what it sends on. */
  readonly falling: (point: Vec3, normal: Vec3, column: number, row: number) => Radiance;
}

export function shaderOf(
  mesh: Mesh,
  visible: Visible | null,
  camera: Pinhole,
  maps: readonly ShadowMap[],
): Shader {
  const radiance = new Float64Array(3);
  const surface = blankSurface();
  const place: Place = { x: 0, y: 0, z: 0, nx: 0, ny: 0, nz: 1, vx: 0, vy: 0, vz: 1 };
  const look = (): void => {
    const vx = camera.eye[0] - place.x;
    const vy = camera.eye[1] - place.y;
    const vz = camera.eye[2] - place.z;
    const far = Math.hypot(vx, vy, vz);
    place.vx = vx / far;
    place.vy = vy / far;
    place.vz = vz / far;
  };
  return {
    triangle: (triangle, sampleX, sampleY) => {
      if (!visible) throw new RangeError('Expected a rasterised mesh for the shader');
      const part = mesh.parts[mesh.partOf[triangle] as number] as Part;
      const weights = cornerWeights(mesh, visible, triangle, sampleX, sampleY);
      placeOnTriangle(place, mesh, triangle, weights);
      look();
      const face = faceNormal(mesh, triangle);
      const front = face[0] * place.vx + face[1] * place.vy + face[2] * place.vz > 0;
      const pattern = interpolate(mesh.coordinates, mesh, triangle, weights);
      paintSurface(surface, part, pattern[0], pattern[1], pattern[2], front);
      if (!front) flip(place);
      if (surface.slopeX !== 0 || surface.slopeY !== 0) tilt(place, surface, mesh, triangle);
      light(radiance, place, surface, maps, part.canopy, sampleX, sampleY);
      return radiance;
    },
    falling: (point, normal, column, row) => {
      [place.x, place.y, place.z] = point;
      [place.nx, place.ny, place.nz] = normal;
      look();
      surface.red = surface.green = surface.blue = 1;
      surface.throughRed = surface.throughGreen = surface.throughBlue = surface.shine = 0;
      light(radiance, place, surface, maps, false, column, row);
      return radiance;
    },
  };
}

/** Adds up what every lamp that reaches the place sends on to the camera. */
function light(
  out: Radiance,
  place: Place,
  surface: Surface,
  maps: readonly ShadowMap[],
  canopy: boolean,
  column: number,
  row: number,
): void {
  const { x, y, z, nx, ny, nz, vx, vy, vz } = place;
  let [onRed, onGreen, onBlue] = [0, 0, 0];
  let [byRed, byGreen, byBlue] = [0, 0, 0];
  let [shineRed, shineGreen, shineBlue] = [0, 0, 0];
  let [open, shut] = [0, 0];
  const startX = latticeChance(Math.floor(column), Math.floor(row), 1);
  const startY = latticeChance(Math.floor(column), Math.floor(row), 2);
  const seesThrough = surface.throughGreen > 0;
  for (let index = 0; index < maps.length; index++) {
    const map = maps[index] as ShadowMap;
    const [lx, ly, lz] = map.lamp.toward;
    const facing = nx * lx + ny * ly + nz * lz;
    if (facing <= 0 && !seesThrough) continue;
    // Each lamp takes the next step of the R2 sequence (Roberts 2018), so the scatter is even over the lamps.
    const shiftX = 2 * ((startX + index * 0.7548776662) % 1) - 1;
    const shiftY = 2 * ((startY + index * 0.569840291) % 1) - 1;
    const lit = reaches(map, x + nx * 0.5, y + ny * 0.5, z + nz * 0.5, shiftX, shiftY);
    const [red, green, blue] = map.lamp.strength;
    const weight = green * Math.abs(facing);
    if (lit === 0) {
      shut += weight;
      continue;
    }
    open += weight;
    if (facing <= 0) {
      byRed -= facing * red;
      byGreen -= facing * green;
      byBlue -= facing * blue;
      continue;
    }
    onRed += facing * red;
    onGreen += facing * green;
    onBlue += facing * blue;
    if (surface.shine > 0) {
      const hx = lx + vx;
      const hy = ly + vy;
      const hz = lz + vz;
      const toHalf = Math.max(0, (nx * hx + ny * hy + nz * hz) / Math.hypot(hx, hy, hz));
      const grazing = (1 - Math.max(0, nx * vx + ny * vy + nz * vz)) ** 5;
      const strength =
        (surface.shine + 0.5 * surface.shine * grazing * 6) *
        (0.3 + 0.16 * surface.narrowness) *
        toHalf ** surface.narrowness *
        facing;
      shineRed += strength * red;
      shineGreen += strength * green;
      shineBlue += strength * blue;
    }
  }
  const glow = canopy ? (shut / (open + shut + 1e-9)) * 0.8 : 0;
  out[0] = surface.red * onRed + surface.throughRed * byRed + shineRed + glow * LEAF_GLOW[0];
  out[1] = surface.green * onGreen + surface.throughGreen * byGreen + shineGreen + glow * LEAF_GLOW[1];
  out[2] = surface.blue * onBlue + surface.throughBlue * byBlue + shineBlue + glow * LEAF_GLOW[2];
}

/** Shares of the triangle's corners at a sample, corrected for depth. */
function cornerWeights(mesh: Mesh, visible: Visible, triangle: number, x: number, y: number): Vec3 {
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

function interpolate(values: readonly number[], mesh: Mesh, triangle: number, weights: Vec3): Vec3 {
  const a = (mesh.corners[triangle * 3] as number) * 3;
  const b = (mesh.corners[triangle * 3 + 1] as number) * 3;
  const c = (mesh.corners[triangle * 3 + 2] as number) * 3;
  const at = (axis: number): number =>
    weights[0] * (values[a + axis] as number) +
    weights[1] * (values[b + axis] as number) +
    weights[2] * (values[c + axis] as number);
  return [at(0), at(1), at(2)];
}

function placeOnTriangle(place: Place, mesh: Mesh, triangle: number, weights: Vec3): void {
  [place.x, place.y, place.z] = interpolate(mesh.positions, mesh, triangle, weights);
  const [nx, ny, nz] = interpolate(mesh.normals, mesh, triangle, weights);
  const size = Math.hypot(nx, ny, nz) || 1;
  place.nx = nx / size;
  place.ny = ny / size;
  place.nz = nz / size;
}

function flip(place: Place): void {
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

function faceNormal(mesh: Mesh, triangle: number): Vec3 {
  const a = (mesh.corners[triangle * 3] as number) * 3;
  const u = edge(mesh.positions, a, (mesh.corners[triangle * 3 + 1] as number) * 3);
  const v = edge(mesh.positions, a, (mesh.corners[triangle * 3 + 2] as number) * 3);
  return [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
}

/** Leans the normal by the surface's slopes along its pattern coordinates (bump mapping, Blinn 1978). */
function tilt(place: Place, surface: Surface, mesh: Mesh, triangle: number): void {
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
