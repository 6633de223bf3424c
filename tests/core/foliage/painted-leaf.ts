import { PARTS, type Part, type PartMap } from '../../../core/canopy/found-plant.ts';
import { seededNoise } from '../../../core/measures/seeded-noise.ts';
import type { Raster } from '../../../core/raster/raster.ts';

/** Linear reflectances of leaf, all our own. */
export const GREEN = [0.08, 0.16, 0.035] as const;
export const YELLOW = [0.5, 0.42, 0.07] as const;
export const BROWN = [0.17, 0.1, 0.045] as const;
export const GOLDEN = [0.42, 0.39, 0.06] as const;

export type Colour = readonly [number, number, number];

export interface Painted {
  readonly raster: Raster;
  readonly parts: PartMap;
}

export const SIDE_PX = 120;

/**
 * A square of leaf that fills the picture but for a margin, each place in a shade and noise of its own.
 *
 * @param colourAt linear reflectance at a place, both 0–1 across the leaf
 * @param light strength of red, green and blue
 */
export function paintLeaf(
  colourAt: (across: number, down: number) => Colour,
  light: Colour = [1, 1, 1],
  part: Part = 'leaf',
): Painted {
  const noise = seededNoise(11);
  const data = new Uint8Array(3 * SIDE_PX * SIDE_PX);
  const parts = new Uint8Array(SIDE_PX * SIDE_PX);
  const margin = 10;
  for (let i = 0; i < parts.length; i++) {
    const [x, y] = [i % SIDE_PX, Math.floor(i / SIDE_PX)];
    const inside = x >= margin && y >= margin && x < SIDE_PX - margin && y < SIDE_PX - margin;
    const shade = 0.7 + 0.6 * (((x >> 2) * 7 + (y >> 2) * 5) % 11) * 0.1;
    const span = SIDE_PX - 2 * margin;
    const colour = inside ? colourAt((x - margin + 0.5) / span, (y - margin + 0.5) / span) : [0.3, 0.3, 0.3];
    if (inside) parts[i] = PARTS.indexOf(part);
    for (let c = 0; c < 3; c++) {
      const linear = (colour[c] as number) * (inside ? shade : 1) * (light[c] as number);
      data[3 * i + c] = Math.max(0, Math.min(255, Math.round(coded(linear) + 1.2 * noise.normal())));
    }
  }
  return {
    raster: { width: SIDE_PX, height: SIDE_PX, data },
    parts: { width: SIDE_PX, height: SIDE_PX, data: parts },
  };
}

function coded(linear: number): number {
  return 255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.min(1, linear) ** (1 / 2.4) - 0.055);
}
