import { smoothStep } from '../geometry/keyframes.ts';
import { blend, squareTo, turnAbout, UP } from '../geometry/vector.ts';
import { addStalkedLeaf } from './add-leaf.ts';
import { pointAlong } from './curve.ts';
import { type Growing, jitter, mixColours } from './growing.ts';
import type { Limb } from './skeleton.ts';

/** Adds the leaves that stand on main stems and forks themselves, not on the growing shoots. */
export function addLimbLeaves(growing: Growing): void {
  const stop = growing.spec.deepStop;
  for (const [index, limb] of growing.skeleton.limbs.entries()) {
    if (limb.level === 0) continue;
    if (stop && growing.week >= stop.week) addLeavesAfterStop(growing, limb, index, growing.week - stop.week);
    else addOldLeaves(growing, limb, index);
  }
}

/** On a plant in leaf, some old, long-stalked leaves low on the main stems fill the foot of the bush. */
function addOldLeaves(growing: Growing, limb: Limb, index: number): void {
  const leaves = limb.level === 1 ? 3 : 1;
  for (let leaf = 0; leaf < leaves; leaf++) {
    addLimbLeaf(growing, limb, index, leaf, {
      share: 0.25,
      grown: growing.chance.between(0.6, 0.85, 95, index, leaf),
      stalk: 2.1,
    });
  }
}

/** A deep stop leaves a few small leaves, which grow on as the stems break. */
function addLeavesAfterStop(growing: Growing, limb: Limb, index: number, since: number): void {
  const { chance } = growing;
  const leaves = limb.level === 1 ? 3 : 2;
  for (let leaf = 0; leaf < leaves; leaf++) {
    const start = chance.between(-3, 4, 90, index, leaf);
    const grown = 0.12 + 0.5 * smoothStep(start, start + 7, since);
    if (since < start && chance.uniform(91, index, leaf) < 0.75) continue;
    addLimbLeaf(growing, limb, index, leaf, { share: 0.35, grown, stalk: 1.3 });
  }
}

/** `share` is the lowest place on the limb, `stalk` the stalk's length in blade radii. */
function addLimbLeaf(
  growing: Growing,
  limb: Limb,
  index: number,
  leaf: number,
  { share, grown, stalk }: { share: number; grown: number; stalk: number },
): void {
  const { chance, spec } = growing;
  const at = pointAlong(limb.curve, limb.curve.lengthMm * chance.between(share, 1, 92, index, leaf));
  const outward = squareTo([at.point[0], at.point[1], 0], at.direction);
  const aside = turnAbout(outward, at.direction, 0.9 * chance.normal(93, index, leaf));
  const stalkDirection = blend([aside, 0.9], [UP, 0.35]);
  const radiusMm = spec.leaf.radiusMm * grown;
  const normal = blend([UP, 1], [aside, 0.5], [jitter(chance, 94, index, leaf), 0.3]);
  addStalkedLeaf(growing, {
    start: growing.lean(at.point),
    stalkDirection,
    stalkMm: radiusMm * stalk,
    forward: squareTo(stalkDirection, normal),
    normal,
    radiusMm,
    grown,
    colour: mixColours(spec.leaf.youngColour, spec.leaf.colour, stalk > 2 ? 1 : 0.4),
    shoot: -1,
    seed: spec.seed * 37 + index * 11 + leaf,
  });
}
