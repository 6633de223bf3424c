import { valueAt } from '../geometry/keyframes.ts';
import { emptyMesh, type Mesh } from '../geometry/mesh.ts';
import { seededChance } from '../geometry/seeded-random.ts';
import { along, blend, subtract, UP, unit, type Vec3 } from '../geometry/vector.ts';
import { addShootLeaf } from './add-leaf.ts';
import { pointAlong } from './curve.ts';
import { type Growing, jitter, leaning, mixColours } from './growing.ts';
import type { Detail } from './leaf-blade.ts';
import { addLimbLeaves } from './limb-leaves.ts';
import type { Cut, PlantSpec } from './plant-spec.ts';
import { type StandingShoot, standingShoot } from './shoot-growth.ts';
import { growSkeleton } from './skeleton.ts';
import { addStemTube } from './stem-tube.ts';
import { addTruss } from './truss.ts';

/** A plant in one week: its surfaces, and where each shoot's stem ends. */
export interface BuiltPlant {
  readonly mesh: Mesh;
  readonly tips: readonly ShootTip[];
  readonly centre: Vec3;
}

export interface ShootTip {
  readonly shoot: number;
  readonly tip: Vec3;
  readonly lengthMm: number;
  readonly long: boolean;
}

const OLD_WOOD: Vec3 = [0.17, 0.125, 0.075];
const GREEN_WOOD: Vec3 = [0.12, 0.17, 0.05];
/** Leaves further than this behind the tip have dropped, mm. */
const LEAFY_MM = 92;

/** Builds the plant's surfaces for a week, with the mark at azimuth 0 (not turned yet). */
export function buildPlant(spec: PlantSpec, week: number, cuts: readonly Cut[], detail: Detail): BuiltPlant {
  const chance = seededChance(spec.seed + 7);
  const skeleton = growSkeleton(spec);
  const mesh = emptyMesh();
  const growing: Growing = {
    mesh,
    spec,
    skeleton,
    week,
    chance,
    lean: leaning(spec, week, skeleton),
    detail,
  };
  for (const [index, limb] of skeleton.limbs.entries()) {
    addStemTube(
      mesh,
      {
        points: limb.curve.points.map(growing.lean),
        baseRadiusMm: limb.baseRadiusMm,
        tipRadiusMm: limb.tipRadiusMm,
        colour: mixColours(OLD_WOOD, GREEN_WOOD, limb.level / 3),
        jointShares: [0.2, 0.4, 0.6, 0.8, 1],
        shoot: -1,
        seed: index,
      },
      detail,
    );
  }
  if (spec.bare !== true) addLimbLeaves(growing);
  const tips: ShootTip[] = [];
  for (const path of skeleton.shoots) {
    const shoot = standingShoot(spec, skeleton, path, week, cuts, chance);
    if (shoot) tips.push(addShoot(growing, shoot));
  }
  return { mesh, tips, centre: skeleton.centre };
}

/** Adds a shoot's stem, leaves and flower head; tells where its stem ends. */
function addShoot(growing: Growing, shoot: StandingShoot): ShootTip {
  const { path, lengthMm } = shoot;
  const steps = Math.max(3, Math.ceil(lengthMm / 5));
  const points = Array.from({ length: steps + 1 }, (_, step) =>
    growing.lean(pointAlong(path.curve, (lengthMm * step) / steps).point),
  );
  addStemTube(
    growing.mesh,
    {
      points,
      baseRadiusMm: 2.5,
      tipRadiusMm: shoot.cut ? 2.1 : 1.5,
      colour: GREEN_WOOD,
      jointShares: shoot.joints.map((joint) => joint.alongMm / lengthMm),
      shoot: path.id,
      seed: path.id,
    },
    growing.detail,
  );
  for (const joint of shoot.joints) {
    if (growing.spec.bare !== true && shoot.uncutMm - joint.alongMm <= LEAFY_MM)
      addShootLeaf(growing, shoot, joint);
  }
  const tip = points[points.length - 1] as Vec3;
  if (!shoot.cut && growing.spec.bare !== true) addFlowerHead(growing, path.id, tip);
  const long = path.long !== null && valueAt(path.long.excessMm, growing.week) > 0;
  return { shoot: path.id, tip, lengthMm, long };
}

/** Adds the shoot's flower head, if it is one that flowers and its time has come. */
function addFlowerHead(growing: Growing, shoot: number, tip: Vec3): void {
  const { spec, chance, week, skeleton } = growing;
  const flower = spec.flower;
  if (!flower || chance.uniform(80, shoot) >= flower.share) return;
  const stage = valueAt(flower.stage, week) - chance.between(0, 0.5, 81, shoot);
  if (stage <= 0) return;
  const facing = unit(subtract(tip, growing.lean(skeleton.centre)));
  const direction = blend([facing, 1], [UP, 0.5], [jitter(chance, 82, shoot), 0.2]);
  const place = { base: along(tip, facing, -4), direction, stage, shoot, seed: spec.seed * 977 + shoot };
  addTruss(growing.mesh, place, flower, growing.detail);
}
