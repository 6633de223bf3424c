import { type Chance, seededChance } from '../geometry/seeded-random.ts';
import {
  add,
  along,
  azimuthDirection,
  blend,
  dot,
  evenDirections,
  scale,
  subtract,
  UP,
  unit,
  type Vec3,
} from '../geometry/vector.ts';
import { type Curve, pointAlong, smoothCurve } from './curve.ts';
import type { LongShoot, PlantSpec } from './plant-spec.ts';

/** Depth of the soil below the rim, mm. */
export const SOIL_DEPTH_MM = 14;
const TRUNK_MM = 9;

/** A stem that was stopped before the season and now only carries others. */
export interface Limb {
  readonly curve: Curve;
  readonly baseRadiusMm: number;
  readonly tipRadiusMm: number;
  /** 0 trunk, 1 main stem, 2 fork. */
  readonly level: number;
}

/** A growing stem's whole way, from its fork to the place its tip reaches at the season's largest. */
export interface ShootPath {
  readonly id: number;
  readonly curve: Curve;
  /** Share by which this shoot runs ahead of (above 1) or behind the others. */
  readonly vigour: number;
  /** 0 grows before a deep stop, 1 after it. */
  readonly flush: 0 | 1;
  readonly forkRadiusMm: number;
  readonly long: LongShoot | null;
}

export interface Skeleton {
  readonly limbs: readonly Limb[];
  readonly shoots: readonly ShootPath[];
  readonly largestRadiusMm: number;
  readonly centre: Vec3;
}

/**
 * Grows the branching that all weeks of a plant share: trunk, main stems, forks, and the way of each shoot
 * from its fork to the ball's surface.
 *
 * Shoots aim at points spread evenly over the ball, so the canopy is round but for the chances of each shoot.
 */
export function growSkeleton(spec: PlantSpec): Skeleton {
  const chance = seededChance(spec.seed);
  const radii = [...spec.radiusMm, ...(spec.deepStop?.radiusMm ?? [])].map(([, mm]) => mm);
  const largestRadiusMm = Math.max(...radii);
  const centre: Vec3 = [0, 0, spec.centreHeight * largestRadiusMm];
  const base: Vec3 = [0, 0, -SOIL_DEPTH_MM];
  const crown: Vec3 = [chance.between(-3, 3, 1), chance.between(-3, 3, 2), TRUNK_MM - SOIL_DEPTH_MM];
  const limbs: Limb[] = [
    { curve: smoothCurve(base, UP, crown, UP), baseRadiusMm: 6.5, tipRadiusMm: 5.6, level: 0 },
  ];

  const mainStems = Math.max(4, Math.round(spec.forks / 3.2));
  const mains = spreadDirections(mainStems, 8, chance, 10).map((direction, index) => {
    const end = add(
      scale(centre, 0.55),
      scale(direction, largestRadiusMm * chance.between(0.2, 0.26, 11, index)),
    );
    const curve = smoothCurve(
      crown,
      blend([direction, 0.8], [UP, 0.6]),
      end,
      blend([direction, 0.5], [UP, 0.8]),
    );
    limbs.push({ curve, baseRadiusMm: 4.6, tipRadiusMm: 3.6, level: 1 });
    return { direction, curve };
  });
  const forks = spreadDirections(spec.forks, spec.lowestDeg + 8, chance, 20).map((direction, index) => {
    const parent = nearest(mains, direction);
    const start = pointAlong(parent.curve, parent.curve.lengthMm * chance.between(0.72, 1, 21, index));
    const end = add(centre, scale(direction, largestRadiusMm * chance.between(0.36, 0.46, 22, index)));
    const curve = smoothCurve(start.point, start.direction, end, blend([direction, 0.8], [UP, 0.5]));
    limbs.push({ curve, baseRadiusMm: 3.4, tipRadiusMm: 2.7, level: 2 });
    return { direction, curve };
  });

  const shoots: ShootPath[] = [];
  const addShoot = (direction: Vec3, flush: 0 | 1, long: LongShoot | null): void => {
    const id = shoots.length;
    const fork = nearest(forks, direction);
    const start = pointAlong(fork.curve, fork.curve.lengthMm * chance.between(0.7, 1, 31, id));
    const reachMm = largestRadiusMm - spec.leaf.radiusMm * 0.62;
    const end = add(centre, scale(direction, reachMm));
    const leaving = blend([start.direction, 0.6], [unit(subtract(end, start.point)), 0.8]);
    shoots.push({
      id,
      curve: smoothCurve(start.point, leaving, end, blend([direction, 1], [UP, 0.45])),
      vigour: long ? 1 : 1 + 0.045 * clampTo(chance.normal(32, id), 1.6),
      flush,
      forkRadiusMm: dot(subtract(start.point, centre), direction),
      long,
    });
  };
  for (const flush of spec.deepStop ? ([0, 1] as const) : ([0] as const)) {
    for (const direction of spreadDirections(spec.shoots, spec.lowestDeg, chance, 40 + flush)) {
      addShoot(direction, flush, null);
    }
  }
  for (const long of spec.longShoots) addShoot(raised(long.azimuthDeg, long.elevationDeg), 0, long);
  return { limbs, shoots, largestRadiusMm, centre };
}

/** The unit direction of an azimuth and an elevation, degrees. */
export function raised(azimuthDeg: number, elevationDeg: number): Vec3 {
  const elevation = (elevationDeg * Math.PI) / 180;
  return along(scale(azimuthDirection(azimuthDeg), Math.cos(elevation)), UP, Math.sin(elevation));
}

/** `count` directions spread evenly, with a little chance, over the sphere above an elevation. */
function spreadDirections(count: number, lowestDeg: number, chance: Chance, key: number): Vec3[] {
  const lowestZ = Math.sin((lowestDeg * Math.PI) / 180);
  const whole = Math.round((2 * count) / (1 - lowestZ));
  const turn = chance.between(0, 2 * Math.PI, key);
  const shake = 0.35 / Math.sqrt(count);
  return evenDirections(whole, turn)
    .slice(0, count)
    .map((direction, index) => {
      const shift: Vec3 = [0, 1, 2].map((axis) => shake * chance.normal(key, index, axis)) as unknown as Vec3;
      return unit(add(direction, shift));
    });
}

function nearest<T extends { direction: Vec3 }>(candidates: readonly T[], direction: Vec3): T {
  return candidates.reduce((best, one) =>
    dot(one.direction, direction) > dot(best.direction, direction) ? one : best,
  );
}

function clampTo(value: number, limit: number): number {
  return Math.min(limit, Math.max(-limit, value));
}
