import type { Mask, Raster } from '../../../core/raster/raster.ts';
import { otsuThreshold } from './otsu.ts';

/**
 * Excess green, 2g - r - b of the chromatic coordinates r = R ÷ (R + G + B) and so on: -1 to 2, 0 for any grey. Black
 * has no colour and counts as grey.
 *
 * Reference: Woebbecke, Meyer, Von Bargen and Mortensen (1995), Color indices for weed identification under various
 * soil, residue, and lighting conditions, Trans. ASAE 38(1), 259–269.
 * Example: `excessGreen(0, 255, 0)` is 2.
 */
export function excessGreen(red: number, green: number, blue: number): number {
  const sum = red + green + blue;
  return sum === 0 ? 0 : (2 * green - red - blue) / sum;
}

/** Canopy where excess green lies above Otsu's threshold of the whole photo. */
export function cutByExcessGreen({ width, height, data }: Raster): Mask {
  const index = new Float32Array(width * height);
  for (let i = 0; i < index.length; i++) {
    index[i] = excessGreen(data[3 * i] as number, data[3 * i + 1] as number, data[3 * i + 2] as number);
  }
  const threshold = otsuThreshold(index);
  return { width, height, data: Uint8Array.from(index, (value) => (value >= threshold ? 1 : 0)) };
}
