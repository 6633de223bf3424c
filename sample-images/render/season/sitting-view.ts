import { seededChance } from '../geometry/seeded-random.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { ViewOptions } from '../render-view.ts';
import type { PlantSeason } from './season-spec.ts';

export interface Draft {
  /** Share of the full photo's width and height. */
  readonly size: number;
  readonly samplesPerSide: number;
}

export const FULL: Draft = { size: 1, samplesPerSide: 3 };
export const SMALL: Draft = { size: 0.25, samplesPerSide: 2 };

/** What one photo of a season needs: the stand as it always is, with that day's light and a hair of camera shake. */
export function sittingView(
  season: PlantSeason,
  week: number,
  turnDeg: number,
  draft: Draft,
  scenery: ViewOptions['scenery'],
): ViewOptions {
  const { stand, plant, pot } = season;
  const chance = seededChance(plant.seed * 7919 + week * 13 + turnDeg);
  const warmth = chance.between(-0.03, 0.03, 1);
  const whiteBalance: Vec3 = [1 + warmth, 1, 1 - warmth];
  const shake = (key: number): number => 0.35 * chance.normal(2, key);
  return {
    plant,
    pot,
    week,
    cuts: [],
    turnDeg,
    camera: {
      ...stand.camera,
      aimMm: [stand.camera.aimMm[0] + shake(1), stand.camera.aimMm[1] + shake(2)],
      rollDeg: stand.camera.rollDeg + 0.04 * chance.normal(3),
    },
    light: {
      ...stand.light,
      keyStrength: stand.light.keyStrength * chance.between(0.9, 1.08, 4),
      keyAzimuthDeg: stand.light.keyAzimuthDeg + chance.between(-5, 5, 5),
    },
    backdrop: stand.backdrop,
    scenery: stand.busy ? scenery : null,
    finish: {
      exposureStops: stand.exposureStops + chance.between(0.12, 0.3, 6),
      whiteBalance,
      lensBlurPx: 0.75 * draft.size,
      noise: 1.5,
      noiseSeed: plant.seed * 31 + week * 7 + turnDeg,
    },
    widthPx: Math.round(stand.widthPx * draft.size),
    heightPx: Math.round(stand.heightPx * draft.size),
    samplesPerSide: draft.samplesPerSide,
  };
}
