import { valueAt } from '../geometry/keyframes.ts';
import type { Mesh } from '../geometry/mesh.ts';
import type { Chance } from '../geometry/seeded-random.ts';
import { add, along, azimuthDirection, scale, type Vec3 } from '../geometry/vector.ts';
import type { Detail } from './leaf-blade.ts';
import type { PlantSpec } from './plant-spec.ts';
import { type Skeleton, SOIL_DEPTH_MM } from './skeleton.ts';

/** A plant being built for one week: what all its pieces share. */
export interface Growing {
  readonly mesh: Mesh;
  readonly spec: PlantSpec;
  readonly skeleton: Skeleton;
  readonly week: number;
  readonly chance: Chance;
  /** Moves a point of the upright plant to where the leaning plant has it. */
  readonly lean: (point: Vec3) => Vec3;
  readonly detail: Detail;
}

/** Bends the plant towards its light: nothing at the soil, the whole lean at the top. */
export function leaning(spec: PlantSpec, week: number, skeleton: Skeleton): (point: Vec3) => Vec3 {
  const topMm = skeleton.centre[2] + skeleton.largestRadiusMm + SOIL_DEPTH_MM;
  const direction = azimuthDirection(spec.leanAzimuthDeg);
  const leanMm = valueAt(spec.leanMm, week);
  return (point) => {
    const height = Math.max(0, (point[2] + SOIL_DEPTH_MM) / topMm);
    return along(point, direction, leanMm * height ** 1.15);
  };
}

/** The direction leaves turn to: the lean's side, the stronger the more the plant leans. */
export function sunward(spec: PlantSpec, week: number): Vec3 {
  return scale(
    azimuthDirection(spec.leanAzimuthDeg),
    Math.max(-1, Math.min(1, valueAt(spec.leanMm, week) / 40)),
  );
}

/** A small random direction, the same for the same keys. */
export function jitter(chance: Chance, ...keys: number[]): Vec3 {
  return [chance.normal(...keys, 1), chance.normal(...keys, 2), chance.normal(...keys, 3)];
}

/** A colour between two, `share` of the way to the second. */
export function mixColours(first: Vec3, second: Vec3, share: number): Vec3 {
  return add(scale(first, 1 - share), scale(second, share));
}
