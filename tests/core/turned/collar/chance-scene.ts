import { seededChance } from '../../../../sample-images/render/geometry/seeded-random.ts';
import type { CollarPhotoScene, StripOnPot } from './photographed-collar.ts';

/** What a scene is to have; the rest is left to chance. */
export interface ChanceWish {
  readonly collar: boolean;
  readonly leafy: boolean;
}

const POTS = [
  [0.36, 0.15, 0.075],
  [0.02, 0.02, 0.021],
  [0.055, 0.13, 0.06],
  [0.62, 0.61, 0.58],
  [0.3, 0.1, 0.05],
] as const;
const WALLS = [
  [0.3, 0.31, 0.33],
  [0.015, 0.015, 0.016],
  [0.55, 0.54, 0.5],
  [0.08, 0.14, 0.28],
] as const;

/**
 * A drawn pot by its seed: 90 to 200 mm across, at 1.4 to 3.6 px a mm, the camera 0.8 to 3 m away and 0 to 400 mm above the rim, the strip put
 * on as people do: printed a little large or small, round the lip or below it, loose, aslant, on a cone.
 */
export function chanceScene(seed: number, { collar, leafy }: ChanceWish): CollarPhotoScene {
  const chance = seededChance(seed * 613 + 29);
  const pick = <T>(list: readonly T[], key: number): T =>
    list[Math.floor(chance.uniform(key) * list.length)] as T;
  const rimMm = Math.round(chance.between(90, 200, 1));
  return {
    rimMm,
    turnDeg: chance.between(0, 360, 2),
    pxPerMm: chance.between(1.4, 3.6, 3),
    distanceMm: chance.between(800, 3000, 4),
    heightMm: chance.between(0, 400, 5),
    rollDeg: 0.8 * chance.normal(6),
    collar: collar ? chanceStrip(seed, rimMm) : null,
    potColour: pick(POTS, 7),
    wallColour: pick(WALLS, 8),
    exposure: 2 ** chance.between(-1.5, 1, 9),
    lightDeg: chance.between(-100, 100, 10),
    lightShare: chance.between(0.1, 0.85, 11),
    blurPx: chance.between(0.4, 1.8, 12),
    noiseSteps: chance.between(0.5, 6, 13),
    leaves: {
      count: Math.round(leafy ? chance.between(8, 45, 14) : chance.between(0, 30, 14)),
      lowest: leafy ? chance.between(0, 0.3, 15) : -0.08,
      size: chance.between(0.12, 0.3, 16),
    },
    mirrored: false,
    seed,
  };
}

function chanceStrip(seed: number, rimMm: number): StripOnPot {
  const chance = seededChance(seed * 31 + 11);
  const belowLip = chance.uniform(1) < 0.35;
  const radiusMm = (rimMm / 2) * (belowLip ? chance.between(0.93, 0.99, 3) : chance.between(1, 1.015, 3));
  return {
    // Its ends meet within 1.2 % of the way round: 5 mm at a rim of 130.
    printedForMm: 2 * radiusMm * (1 + 0.006 * chance.normal(2)),
    radiusMm,
    dropMm: belowLip ? rimMm * chance.between(0.08, 0.16, 4) : chance.between(0.5, 4, 4),
    taperDeg: chance.between(0, belowLip ? 9 : 4, 5),
    sagMm: Math.abs(0.008 * rimMm * chance.normal(6)),
    sagAzimuthDeg: chance.between(0, 360, 7),
    upsideDown: false,
    paper: chance.between(0.6, 0.85, 8),
    ink: chance.between(0.025, 0.08, 9),
  };
}
