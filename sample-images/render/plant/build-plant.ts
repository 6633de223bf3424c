import { smoothStep, valueAt } from '../geometry/keyframes.ts';
import { emptyMesh, type Mesh } from '../geometry/mesh.ts';
import { type Chance, seededChance } from '../geometry/seeded-random.ts';
import {
  add,
  along,
  azimuthDirection,
  blend,
  scale,
  squareTo,
  subtract,
  turnAbout,
  UP,
  unit,
  type Vec3,
} from '../geometry/vector.ts';
import { pointAlong } from './curve.ts';
import { addLeafBlade, type Detail } from './leaf-blade.ts';
import type { Cut, PlantSpec } from './plant-spec.ts';
import { type Joint, type StandingShoot, standingShoot } from './shoot-growth.ts';
import { growSkeleton, type Skeleton, SOIL_DEPTH_MM } from './skeleton.ts';
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

const OLD_WOOD: Vec3 = [0.16, 0.13, 0.075];
const GREEN_WOOD: Vec3 = [0.12, 0.17, 0.05];
const GOLDEN_RAD = Math.PI * (3 - Math.sqrt(5));
/** Leaves further than this behind the tip have dropped, mm. */
const LEAFY_MM = 92;

/** Builds the plant's surfaces for a week, with the mark at azimuth 0 (not turned yet). */
export function buildPlant(spec: PlantSpec, week: number, cuts: readonly Cut[], detail: Detail): BuiltPlant {
  const chance = seededChance(spec.seed + 7);
  const skeleton = growSkeleton(spec);
  const mesh = emptyMesh();
  const lean = leaning(spec, week, skeleton);
  for (const [index, limb] of skeleton.limbs.entries()) {
    addStemTube(
      mesh,
      {
        points: limb.curve.points.map(lean),
        baseRadiusMm: limb.baseRadiusMm,
        tipRadiusMm: limb.tipRadiusMm,
        colour: blend3(OLD_WOOD, GREEN_WOOD, limb.level / 3),
        jointShares: [0.2, 0.4, 0.6, 0.8, 1],
        shoot: -1,
        seed: index,
      },
      detail,
    );
  }
  if (spec.deepStop && week >= spec.deepStop.week)
    addStumpLeaves(mesh, spec, skeleton, week, chance, lean, detail);
  const tips: ShootTip[] = [];
  for (const path of skeleton.shoots) {
    const shoot = standingShoot(spec, skeleton, path, week, cuts, chance);
    if (!shoot) continue;
    tips.push(addShoot(mesh, spec, skeleton, shoot, week, chance, lean, detail));
  }
  return { mesh, tips, centre: skeleton.centre };
}

/** Adds a shoot's stem, leaves and flower head; tells where its stem ends. */
function addShoot(
  mesh: Mesh,
  spec: PlantSpec,
  skeleton: Skeleton,
  shoot: StandingShoot,
  week: number,
  chance: Chance,
  lean: (point: Vec3) => Vec3,
  detail: Detail,
): ShootTip {
  const { path, lengthMm } = shoot;
  const steps = Math.max(3, Math.ceil(lengthMm / 5));
  const points = Array.from({ length: steps + 1 }, (_, step) =>
    lean(pointAlong(path.curve, (lengthMm * step) / steps).point),
  );
  addStemTube(
    mesh,
    {
      points,
      baseRadiusMm: 2.5,
      tipRadiusMm: shoot.cut ? 2.1 : 1.5,
      colour: GREEN_WOOD,
      jointShares: shoot.joints.map((joint) => joint.alongMm / lengthMm),
      shoot: path.id,
      seed: path.id,
    },
    detail,
  );
  for (const joint of shoot.joints) {
    if (lengthMm - joint.alongMm > LEAFY_MM) continue;
    addLeaf(mesh, spec, skeleton, shoot, joint, week, chance, lean, detail);
  }
  const tip = points[points.length - 1] as Vec3;
  const flower = spec.flower;
  if (flower && !shoot.cut && chance.uniform(80, path.id) < flower.share) {
    const stage = valueAt(flower.stage, week) - chance.between(0, 0.5, 81, path.id);
    if (stage > 0) {
      const facing = unit(subtract(tip, lean(skeleton.centre)));
      const direction = blend([facing, 1], [UP, 0.5], [jitter(chance, 82, path.id), 0.2]);
      const base = along(tip, facing, -4);
      addTruss(
        mesh,
        { base, direction, stage, shoot: path.id, seed: spec.seed * 977 + path.id },
        flower,
        detail,
      );
    }
  }
  return { shoot: path.id, tip, lengthMm, long: path.long !== null && valueAt(path.long.excessMm, week) > 0 };
}

/** Adds one leaf with its stalk: it leaves the stem sideways, seeks the open, and lays its blade to the light. */
function addLeaf(
  mesh: Mesh,
  spec: PlantSpec,
  skeleton: Skeleton,
  shoot: StandingShoot,
  joint: Joint,
  week: number,
  chance: Chance,
  lean: (point: Vec3) => Vec3,
  detail: Detail,
): void {
  const { path } = shoot;
  const keys = [path.id, joint.index] as const;
  const at = pointAlong(path.curve, joint.alongMm);
  const start = lean(at.point);
  const open = unit(subtract(at.point, skeleton.centre));
  const aside = turnAbout(
    squareTo(open, at.direction),
    at.direction,
    joint.index * GOLDEN_RAD + path.id * 1.7,
  );
  const behindMm = shoot.lengthMm - joint.alongMm;
  const outer = smoothStep(70, 5, behindMm);
  const stalkDirection = blend(
    [aside, 0.85],
    [at.direction, 0.35 + 0.5 * (1 - joint.grown)],
    [open, 0.75],
    [UP, 0.3],
    [jitter(chance, 71, ...keys), 0.25],
  );
  const radiusMm =
    spec.leaf.radiusMm * joint.grown * chance.between(0.82, 1.1, 70, ...keys) * (0.85 + 0.15 * outer);
  const stalkMm = radiusMm * chance.between(0.75, 1.25, 72, ...keys) + behindMm * 0.2 * joint.grown;
  const light = sunward(spec, week);
  const normal = blend(
    [open, 0.75],
    [UP, 0.5],
    [light, 0.35],
    [stalkDirection, 0.2],
    [jitter(chance, 73, ...keys), 0.32],
  );
  const end = along(start, stalkDirection, stalkMm);
  const bow = along(along(start, stalkDirection, stalkMm * 0.5), UP, stalkMm * 0.05);
  addStemTube(
    mesh,
    {
      points: [start, along(start, subtract(bow, start), 0.5), bow, along(bow, subtract(end, bow), 0.5), end],
      baseRadiusMm: 0.7 + 0.5 * joint.grown,
      tipRadiusMm: 0.5 + 0.35 * joint.grown,
      colour: [0.13, 0.21, 0.055],
      jointShares: [],
      shoot: path.id,
      seed: joint.index,
    },
    detail,
  );
  const age = smoothStep(0, 6, joint.ageWeeks);
  const tone = chance.between(0.82, 1.18, 74, ...keys);
  addLeafBlade(
    mesh,
    {
      joint: end,
      forward: squareTo(blend([stalkDirection, 1], [UP, -0.25 * joint.grown], [aside, 0.25]), normal),
      normal,
      radiusMm,
      grown: joint.grown,
      colour: scale(blend3(spec.leaf.youngColour, spec.leaf.colour, age), tone),
      shoot: path.id,
      seed: spec.seed * 1009 + path.id * 101 + joint.index,
    },
    spec.leaf,
    detail,
  );
}

/** A few small leaves that a deep stop leaves on the stems, growing on as the stems break. */
function addStumpLeaves(
  mesh: Mesh,
  spec: PlantSpec,
  skeleton: Skeleton,
  week: number,
  chance: Chance,
  lean: (point: Vec3) => Vec3,
  detail: Detail,
): void {
  const since = week - (spec.deepStop?.week ?? 0);
  for (const [index, limb] of skeleton.limbs.entries()) {
    if (limb.level === 0) continue;
    const leaves = limb.level === 1 ? 3 : 2;
    for (let leaf = 0; leaf < leaves; leaf++) {
      const start = chance.between(-3, 4, 90, index, leaf);
      const grown = 0.12 + 0.5 * smoothStep(start, start + 7, since);
      if (since < start && chance.uniform(91, index, leaf) < 0.75) continue;
      const at = pointAlong(limb.curve, limb.curve.lengthMm * chance.between(0.35, 1, 92, index, leaf));
      const aside = turnAbout(
        squareTo(UP, at.direction),
        at.direction,
        chance.between(0, 6.28, 93, index, leaf),
      );
      const stalkDirection = blend([aside, 0.9], [UP, 0.5]);
      const radiusMm = spec.leaf.radiusMm * grown;
      const begin = lean(at.point);
      const end = along(begin, stalkDirection, radiusMm * 1.3);
      const normal = blend([UP, 1], [aside, 0.5], [jitter(chance, 94, index, leaf), 0.3]);
      const middle = along(begin, stalkDirection, radiusMm * 0.65);
      addStemTube(
        mesh,
        {
          points: [begin, middle, end],
          baseRadiusMm: 0.9,
          tipRadiusMm: 0.7,
          colour: [0.13, 0.2, 0.055],
          jointShares: [],
          shoot: -1,
          seed: leaf,
        },
        detail,
      );
      addLeafBlade(
        mesh,
        {
          joint: end,
          forward: squareTo(stalkDirection, normal),
          normal,
          radiusMm,
          grown,
          colour: blend3(spec.leaf.youngColour, spec.leaf.colour, 0.4),
          shoot: -1,
          seed: spec.seed * 37 + index * 11 + leaf,
        },
        spec.leaf,
        detail,
      );
    }
  }
}

/** Bends the plant towards its light: nothing at the soil, the whole lean at the top. */
function leaning(spec: PlantSpec, week: number, skeleton: Skeleton): (point: Vec3) => Vec3 {
  const topMm = skeleton.centre[2] + skeleton.largestRadiusMm + SOIL_DEPTH_MM;
  const direction = azimuthDirection(spec.leanAzimuthDeg);
  const leanMm = valueAt(spec.leanMm, week);
  return (point) => {
    const height = Math.max(0, (point[2] + SOIL_DEPTH_MM) / topMm);
    return along(point, direction, leanMm * height ** 1.15);
  };
}

/** The direction leaves turn to: the lean's side, the stronger the more the plant leans. */
function sunward(spec: PlantSpec, week: number): Vec3 {
  return scale(
    azimuthDirection(spec.leanAzimuthDeg),
    Math.max(-1, Math.min(1, valueAt(spec.leanMm, week) / 40)),
  );
}

function jitter(chance: Chance, ...keys: number[]): Vec3 {
  return [chance.normal(...keys, 1), chance.normal(...keys, 2), chance.normal(...keys, 3)];
}

function blend3(a: Vec3, b: Vec3, share: number): Vec3 {
  return add(scale(a, 1 - share), scale(b, share));
}
