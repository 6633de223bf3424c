import type { Mesh } from '../geometry/mesh.ts';
import { seededChance } from '../geometry/seeded-random.ts';
import { along, azimuthDirection, blend, scale, squareTo, UP, type Vec3 } from '../geometry/vector.ts';
import { addLeafBlade, type Detail } from './leaf-blade.ts';
import type { LeafLook } from './plant-spec.ts';

/** Leaves that hang over the pot's rim. */
export interface HangingSpec {
  readonly count: number;
  /** Middle and half-width of the stretch that they hang over, azimuth. */
  readonly azimuthDeg: number;
  readonly spreadDeg: number;
  /** How far the lowest stalk ends below the rim. */
  readonly lowestMm: number;
  readonly seed: number;
}

/** Adds leaves hanging before the pot's rim, tips down and out. */
export function addHangingLeaves(
  mesh: Mesh,
  hanging: HangingSpec,
  rimMm: number,
  look: LeafLook,
  detail: Detail,
): void {
  const chance = seededChance(hanging.seed);
  for (let leaf = 0; leaf < hanging.count; leaf++) {
    const azimuth = hanging.azimuthDeg + hanging.spreadDeg * chance.between(-1, 1, 1, leaf);
    const out = azimuthDirection(azimuth);
    const joint = along(
      scale(out, rimMm / 2 + chance.between(5, 22, 2, leaf)),
      UP,
      chance.between(-hanging.lowestMm, 14, 3, leaf),
    );
    const jitter: Vec3 = [chance.normal(4, leaf), chance.normal(5, leaf), chance.normal(6, leaf)];
    const forward = blend([out, 0.5], [UP, -0.8], [jitter, 0.25]);
    addLeafBlade(
      mesh,
      {
        joint,
        forward,
        normal: squareTo(blend([out, 1], [UP, 0.4], [jitter, 0.2]), forward),
        radiusMm: look.radiusMm * chance.between(0.5, 1, 7, leaf),
        grown: 1,
        colour: scale(look.colour, chance.between(0.85, 1.2, 8, leaf)),
        shoot: -1,
        seed: hanging.seed * 61 + leaf,
      },
      look,
      detail,
    );
  }
}
