import type { Mesh, Part } from '../geometry/mesh.ts';
import { latticeChance } from '../geometry/seeded-random.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { reaches, type ShadowMap } from '../light/shadow-map.ts';
import type { Pinhole } from './camera.ts';
import type { Visible } from './rasterise.ts';
import { blankSurface, paintSurface, type Surface } from './surface.ts';
import {
  cornerWeights,
  faceNormal,
  flip,
  interpolate,
  type Place,
  placeOnTriangle,
  tilt,
} from './triangle-place.ts';

/** Light sent to the camera, linear; three numbers that the next call overwrites. */
export type Radiance = Float64Array;

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
    const lx = map.frame[0] as number;
    const ly = map.frame[1] as number;
    const lz = map.frame[2] as number;
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
