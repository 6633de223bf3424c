import { smoothStep } from '../geometry/keyframes.ts';
import {
  along,
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
import { type Growing, jitter, mixColours, sunward } from './growing.ts';
import { addLeafBlade } from './leaf-blade.ts';
import type { Joint, StandingShoot } from './shoot-growth.ts';
import { addStemTube } from './stem-tube.ts';

const GOLDEN_RAD = Math.PI * (3 - Math.sqrt(5));
const STALK_COLOUR: Vec3 = [0.13, 0.21, 0.055];

/** Adds a shoot's leaf: it leaves the stem sideways, seeks the open, and lays its blade to the light. */
export function addShootLeaf(growing: Growing, shoot: StandingShoot, joint: Joint): void {
  const { spec, skeleton, chance, week } = growing;
  const { path } = shoot;
  const keys = [path.id, joint.index] as const;
  const at = pointAlong(path.curve, joint.alongMm);
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
  const normal = blend(
    [open, 0.75],
    [UP, 0.5],
    [sunward(spec, week), 0.35],
    [stalkDirection, 0.2],
    [jitter(chance, 73, ...keys), 0.32],
  );
  const age = smoothStep(0, 6, joint.ageWeeks);
  const tone = chance.between(0.82, 1.18, 74, ...keys);
  addStalkedLeaf(growing, {
    start: growing.lean(at.point),
    stalkDirection,
    stalkMm: radiusMm * chance.between(0.75, 1.25, 72, ...keys) + behindMm * 0.2 * joint.grown,
    forward: squareTo(blend([stalkDirection, 1], [UP, -0.25 * joint.grown], [aside, 0.25]), normal),
    normal,
    radiusMm,
    grown: joint.grown,
    colour: scale(mixColours(spec.leaf.youngColour, spec.leaf.colour, age), tone),
    shoot: path.id,
    seed: spec.seed * 1009 + path.id * 101 + joint.index,
  });
}

export interface StalkedLeaf {
  readonly start: Vec3;
  readonly stalkDirection: Vec3;
  readonly stalkMm: number;
  readonly forward: Vec3;
  readonly normal: Vec3;
  readonly radiusMm: number;
  readonly grown: number;
  readonly colour: Vec3;
  readonly shoot: number;
  readonly seed: number;
}

/** Adds a leaf stalk, bowed up a little, and the blade at its end. */
export function addStalkedLeaf(growing: Growing, leaf: StalkedLeaf): void {
  const { start, stalkDirection, stalkMm } = leaf;
  const end = along(start, stalkDirection, stalkMm);
  const bow = along(along(start, stalkDirection, stalkMm * 0.5), UP, stalkMm * 0.05);
  addStemTube(
    growing.mesh,
    {
      points: [start, along(start, subtract(bow, start), 0.5), bow, along(bow, subtract(end, bow), 0.5), end],
      baseRadiusMm: 0.7 + 0.5 * leaf.grown,
      tipRadiusMm: 0.5 + 0.35 * leaf.grown,
      colour: STALK_COLOUR,
      jointShares: [],
      shoot: leaf.shoot,
      seed: leaf.seed,
    },
    growing.detail,
  );
  addLeafBlade(growing.mesh, { ...leaf, joint: end }, growing.spec.leaf, growing.detail);
}
