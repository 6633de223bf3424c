import type { Vec3 } from '../../../sample-images/render/geometry/vector.ts';
import { type Curve, pointAlong } from '../../../sample-images/render/plant/curve.ts';
import { leaning } from '../../../sample-images/render/plant/growing.ts';
import type { PlantSpec } from '../../../sample-images/render/plant/plant-spec.ts';
import { growSkeleton } from '../../../sample-images/render/plant/skeleton.ts';

/**
 * The middle line of each shoot from the rim plane to its tip, in the renderer's own space, mm: down its shoot, then the fork and the main stem that carry it.
 *
 * @param lengths standing length of each shoot by its number, from the truth
 */
export function stemLines(plant: PlantSpec, lengths: ReadonlyMap<number, number>): Map<number, Vec3[]> {
  const skeleton = growSkeleton(plant);
  const lean = leaning(plant, 0, skeleton);
  const limbs = skeleton.limbs;
  const lines = new Map<number, Vec3[]>();
  for (const shoot of skeleton.shoots) {
    const lengthMm = lengths.get(shoot.id);
    if (lengthMm === undefined) continue;
    const line = sampled(shoot.curve, 0, lengthMm);
    for (const level of [2, 1, 0]) {
      const start = line[0] as Vec3;
      const { curve, at } = nearestPlace(
        limbs.filter((limb) => limb.level === level).map((limb) => limb.curve),
        start,
      );
      line.unshift(...sampled(curve, 0, at).slice(0, -1));
    }
    lines.set(shoot.id, aboveRim(line.map(lean)));
  }
  return lines;
}

function sampled(curve: Curve, from: number, to: number): Vec3[] {
  const steps = Math.max(2, Math.ceil((to - from) / 2));
  return Array.from(
    { length: steps + 1 },
    (_, k) => pointAlong(curve, from + ((to - from) * k) / steps).point,
  );
}

function nearestPlace(curves: readonly Curve[], [x, y, z]: Vec3): { curve: Curve; at: number } {
  let best = { curve: curves[0] as Curve, at: 0 };
  let least = Number.POSITIVE_INFINITY;
  for (const curve of curves) {
    for (let at = 0; at <= curve.lengthMm; at += 0.5) {
      const [px, py, pz] = pointAlong(curve, at).point;
      const apart = Math.hypot(px - x, py - y, pz - z);
      if (apart >= least) continue;
      least = apart;
      best = { curve, at };
    }
  }
  return best;
}

/** What lies above the rim plane, from where the line last rises through it. */
function aboveRim(line: readonly Vec3[]): Vec3[] {
  const below = line.findLastIndex(([, , z]) => z < 0);
  if (below < 0) return [...line];
  const [one, other] = [line[below] as Vec3, line[below + 1] as Vec3];
  const share = -one[2] / (other[2] - one[2]);
  return [
    one.map((value, axis) => value + share * ((other[axis] as number) - value)) as unknown as Vec3,
    ...line.slice(below + 1),
  ];
}
