import type { Mesh } from '../geometry/mesh.ts';
import { seededChance } from '../geometry/seeded-random.ts';

/** How a plant stands a little otherwise when it is photographed again: a draught, a knock, the pot put down anew. */
export interface SwaySpec {
  readonly seed: number;
  /** Spread by which a shoot moves as one, mm, at the ball's edge; less towards the pot. */
  readonly shootMm: number;
  /** Spread by which each leaf and flower moves by itself, mm. */
  readonly leafMm: number;
}

/**
 * Moves shoots, leaves and flowers of a built plant in place, each part as a whole.
 *
 * Which way and how far hangs on the part's own shoot and seed, so the fine and the coarse build of one plant move alike.
 */
export function swayPlant(mesh: Mesh, radiusMm: number, { seed, shootMm, leafMm }: SwaySpec): void {
  const chance = seededChance(seed);
  const moves = mesh.parts.map(({ shoot, seed: own, material }) => {
    const isLeaf = material === 'leaf' || material === 'petal' || material === 'bud';
    const leafSpread = isLeaf ? leafMm : 0;
    const shootSpread = shoot < 0 ? 0 : shootMm;
    return [0, 1, 2].map((axis) => ({
      withShoot: shootSpread * chance.normal(1, shoot, axis),
      alone: leafSpread * chance.normal(2, own, axis),
    }));
  });
  const partOfPoint = new Int32Array(mesh.positions.length / 3).fill(-1);
  mesh.corners.forEach((corner, index) => {
    partOfPoint[corner] = mesh.partOf[Math.floor(index / 3)] as number;
  });
  partOfPoint.forEach((part, point) => {
    if (part < 0) return;
    const place = mesh.positions.slice(3 * point, 3 * point + 3) as [number, number, number];
    const share = Math.hypot(...place) / radiusMm;
    moves[part]?.forEach(({ withShoot, alone }, axis) => {
      mesh.positions[3 * point + axis] = (place[axis] as number) + share * withShoot + alone;
    });
  });
}
