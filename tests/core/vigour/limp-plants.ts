import type { Day } from '../../../core/day/day.ts';
import type { Mask, PointPx } from '../../../core/raster/raster.ts';
import { statureOf } from '../../../core/vigour/stature.ts';
import type { StatureReading } from '../../../core/vigour/wilt.ts';
import { joined } from '../../../sample-images/render/geometry/join-mesh.ts';
import { valueAt } from '../../../sample-images/render/geometry/keyframes.ts';
import { emptyMesh, turnMesh } from '../../../sample-images/render/geometry/mesh.ts';
import { buildPlant } from '../../../sample-images/render/plant/build-plant.ts';
import { type DroopSpec, droopPlant } from '../../../sample-images/render/plant/droop.ts';
import type { Cut } from '../../../sample-images/render/plant/plant-spec.ts';
import { swayPlant } from '../../../sample-images/render/plant/sway.ts';
import { addPot } from '../../../sample-images/render/stand/pot.ts';
import { rimEnds } from '../../../sample-images/render/truth.ts';
import { pinhole } from '../../../sample-images/render/view/camera.ts';
import { rasterise } from '../../../sample-images/render/view/rasterise.ts';
import { stemPlant } from '../stems/stem-plants.ts';

const SIDE_PX = 320;
const PER_SIDE = 2;

/** How a plant stands on the day of a photo. */
export interface Standing {
  /** Weeks: it grows by 5 % in 13 weeks from week 0, and much faster before. */
  readonly week: number;
  readonly cuts?: readonly Cut[];
  readonly droop?: DroopSpec;
  /** The pot is put down so far off its turn. */
  readonly turnDeg?: number;
  /** Seed of how leaves and shoots lie that day. */
  readonly day: number;
}

/** The exact canopy mask of a plant with its rim: coarse leaves, no light. */
export function standingMask(seed: number, standing: Standing): { mask: Mask; rimPx: PointPx } {
  const { plant, pot, camera } = stemPlant({ seed, longStems: 0, bare: false });
  const { mesh } = buildPlant(plant, standing.week, standing.cuts ?? [], 'coarse');
  if (standing.droop !== undefined) droopPlant(mesh, standing.droop);
  swayPlant(mesh, valueAt(plant.radiusMm, standing.week), { seed: standing.day, shootMm: 1, leafMm: 1 });
  const potMesh = emptyMesh();
  addPot(potMesh, pot);
  const scene = joined(mesh, potMesh);
  turnMesh(scene, standing.turnDeg ?? 0);
  const hole = pinhole(camera, SIDE_PX, SIDE_PX);
  const { triangle } = rasterise(scene, hole, SIDE_PX, SIDE_PX, PER_SIDE);
  const isCanopy = Uint8Array.from(scene.partOf, (part) => (scene.parts[part]?.canopy ? 1 : 0));
  const samples = new Uint8Array(SIDE_PX * SIDE_PX);
  triangle.forEach((seen, at) => {
    if (seen < 0 || isCanopy[seen] === 0) return;
    const wide = SIDE_PX * PER_SIDE;
    const px = Math.floor(at / wide / PER_SIDE) * SIDE_PX + Math.floor((at % wide) / PER_SIDE);
    samples[px] = (samples[px] as number) + 1;
  });
  const data = samples.map((count) => (2 * count >= PER_SIDE ** 2 ? 1 : 0));
  const { rimLeftPx, rimRightPx } = rimEnds(hole, pot.rimMm);
  const rimPx: PointPx = [(rimLeftPx[0] + rimRightPx[0]) / 2, (rimLeftPx[1] + rimRightPx[1]) / 2];
  return { mask: { width: SIDE_PX, height: SIDE_PX, data }, rimPx };
}

/** Its stature as a reading, px of the mask. */
export function standingReading(
  seed: number,
  standing: Standing,
  day: Day,
  plusMinusShare: number,
): StatureReading {
  const { mask, rimPx } = standingMask(seed, standing);
  const stature = statureOf(mask, rimPx);
  if (stature === null) throw new Error(`Plant ${seed} has nothing above its rim`);
  const { heightPx: height, spreadPx: spread, middlePx: middle, areaPx: area, reachPx: reach } = stature;
  return { day, height, spread, middle, area, reach, plusMinusShare };
}

/** Every shoot shortened by so much. */
export function tipStop(shortenMm: number): Cut[] {
  return Array.from({ length: 120 }, (_, shoot) => ({ shoot, shortenMm }));
}
