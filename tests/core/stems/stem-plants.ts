import { seededChance } from '../../../sample-images/render/geometry/seeded-random.ts';
import type { LeafLook, LongShoot, PlantSpec } from '../../../sample-images/render/plant/plant-spec.ts';
import type { PotSpec } from '../../../sample-images/render/stand/pot.ts';
import type { CameraSpec } from '../../../sample-images/render/view/camera.ts';

/** A plant whose long stems are known, with its pot and the camera before it. */
export interface StemPlant {
  readonly plant: PlantSpec;
  readonly pot: PotSpec;
  readonly camera: CameraSpec;
}

export interface StemWish {
  readonly seed: number;
  readonly longStems: number;
  readonly bare: boolean;
}

const LEAVES: readonly LeafLook[] = [
  { radiusMm: 30, lobing: 0.075, toothing: 0.05, ruffle: 0.06, zone: 0 },
  { radiusMm: 33, lobing: 0.05, toothing: 0.035, ruffle: 0.045, zone: 0.85 },
  { radiusMm: 20, lobing: 0.12, toothing: 0.06, ruffle: 0.08, zone: 0 },
  { radiusMm: 24, lobing: 0.08, toothing: 0.05, ruffle: 0.05, zone: 0.3 },
].map((look) => ({ ...look, colour: [0.062, 0.122, 0.028], youngColour: [0.15, 0.25, 0.045] }));

/** Long stems stand at least so far apart, degrees, as seen from the ball's centre. */
const APART_DEG = 35;

/** Draws a plant of a seed: size, leaf, number of shoots, lean and where its long stems stand all differ. */
export function stemPlant({ seed, longStems, bare }: StemWish): StemPlant {
  const chance = seededChance(seed * 613 + (bare ? 7 : 0));
  const radius = chance.between(95, 160, 1);
  const leaf = LEAVES[Math.floor(chance.uniform(2) * LEAVES.length)] as LeafLook;
  const lean = chance.uniform(3) < 0.5 ? 0 : chance.between(5, 18, 4);
  return {
    plant: {
      seed: seed * 31 + 5,
      radiusMm: [
        [-14, 0.3 * radius],
        [0, radius],
        [13, 1.05 * radius],
      ],
      centreHeight: chance.between(0.5, 0.75, 5),
      lowestDeg: bare ? chance.between(-10, 5, 6) : chance.between(-35, -20, 6),
      shoots: Math.round(bare ? chance.between(18, 30, 7) : chance.between(50, 85, 7)),
      forks: Math.round(bare ? chance.between(5, 9, 8) : chance.between(14, 20, 8)),
      internodeMm: chance.between(9, 14, 9),
      leaf,
      flower: null,
      leanMm: [[0, lean]],
      leanAzimuthDeg: chance.between(0, 360, 10),
      longShoots: apartStems(chance, longStems, bare),
      deepStop: null,
      bare,
    },
    pot: {
      rimMm: 130,
      heightMm: 115,
      material: 'clay',
      colour: [0.36, 0.15, 0.075],
      mark: 'dot',
      labelDeg: null,
      seed: 5,
    },
    camera: levelCamera(chance.between(1050, 1600, 11), chance.between(90, 220, 12)),
  };
}

/** A camera that looks level, as a photo brought upright does; the whole plant is in sight. */
function levelCamera(distanceMm: number, heightMm: number): CameraSpec {
  return { distanceMm, heightMm, aimMm: [0, heightMm], fieldMm: FIELD_MM, rollDeg: 0 };
}

export const FIELD_MM = 700;
export const SIDE_PX = 1000;

function apartStems(chance: ReturnType<typeof seededChance>, count: number, bare: boolean): LongShoot[] {
  const stems: LongShoot[] = [];
  for (let tried = 0; stems.length < count && tried < 200; tried++) {
    // Evenly over the sphere between the lowest direction and straight up.
    const low = Math.sin(((bare ? 5 : -15) * Math.PI) / 180);
    const elevationDeg = (Math.asin(chance.between(low, 1, 20, tried)) * 180) / Math.PI;
    const azimuthDeg = chance.between(0, 360, 21, tried);
    if (stems.some((stem) => between(stem, { azimuthDeg, elevationDeg }) < APART_DEG)) continue;
    stems.push({ azimuthDeg, elevationDeg, excessMm: [[0, chance.between(15, 80, 22, tried)]] });
  }
  return stems;
}

export interface Direction {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

/** Angle between two directions, degrees. */
export function between(one: Direction, other: Direction): number {
  const rad = Math.PI / 180;
  const cos =
    Math.sin(one.elevationDeg * rad) * Math.sin(other.elevationDeg * rad) +
    Math.cos(one.elevationDeg * rad) *
      Math.cos(other.elevationDeg * rad) *
      Math.cos((one.azimuthDeg - other.azimuthDeg) * rad);
  return (Math.acos(Math.min(1, Math.max(-1, cos))) * 180) / Math.PI;
}
