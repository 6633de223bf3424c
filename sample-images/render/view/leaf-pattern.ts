import { smoothNoise } from '../geometry/seeded-random.ts';
import { VEIN_STEP_RAD } from '../plant/leaf-blade.ts';

/** The veins and the quilting of a leaf blade, drawn once on a square that spans ±`SPAN` blade radii. */
export interface LeafPattern {
  readonly size: number;
  /** Height of the surface, in blade radii. */
  readonly height: Float32Array;
  /** 0 between veins, 1 on a vein. */
  readonly vein: Float32Array;
}

export const SPAN = 1.15;
const SIZE = 384;
/** Distance between side veins along a main vein, in blade radii. */
const SIDE_STEP = 0.25;

let drawn: LeafPattern | null = null;

/** The pattern that all palmate leaves share. */
export function leafPattern(): LeafPattern {
  drawn ??= drawPattern();
  return drawn;
}

function drawPattern(): LeafPattern {
  const height = new Float32Array(SIZE * SIZE);
  const vein = new Float32Array(SIZE * SIZE);
  for (let row = 0; row < SIZE; row++) {
    for (let column = 0; column < SIZE; column++) {
      const x = ((column + 0.5) / SIZE) * 2 * SPAN - SPAN;
      const y = ((row + 0.5) / SIZE) * 2 * SPAN - SPAN;
      const radius = Math.hypot(x, y);
      const theta = Math.atan2(x, y);
      const main = Math.round(theta / VEIN_STEP_RAD);
      const off = theta - main * VEIN_STEP_RAD;
      const across = radius * Math.abs(Math.sin(off));
      const out = radius * Math.cos(off);
      const mainVein = Math.exp(-((across / (0.017 * (1.3 - 0.85 * radius))) ** 2));
      // Side veins leave the main vein at about 40 degrees, on alternate sides, wander and fade as they go.
      const shift = off > 0 ? 0.5 : 0;
      const wander = 0.42 * smoothNoise(x * 3.1, y * 3.1, 3 + main) + 0.16 * smoothNoise(x * 11, y * 11, 9);
      const along = (out - 1.05 * across) / SIDE_STEP + shift + wander;
      const fromSide = Math.abs(along - Math.round(along)) * SIDE_STEP;
      const started = Math.min(1, Math.max(0, (out - 1.05 * across - 0.12) / 0.1));
      const sideVein = Math.exp(-((fromSide / 0.01) ** 2)) * Math.exp(-across * 3) * started;
      const bulge = Math.min(1, across / 0.14) * (1 - 0.55 * started * Math.exp(-((fromSide / 0.035) ** 2)));
      const crinkle =
        0.5 * smoothNoise(x * 9, y * 9, 5) +
        0.35 * smoothNoise(x * 19, y * 19, 6) +
        0.15 * smoothNoise(x * 37, y * 37, 7);
      const at = row * SIZE + column;
      height[at] = 0.02 * bulge + 0.02 * crinkle - 0.01 * mainVein - 0.003 * sideVein;
      vein[at] = Math.min(1, mainVein + 0.4 * sideVein);
    }
  }
  return { size: SIZE, height, vein };
}
