import type { Mask, Raster } from '../../../core/raster/raster.ts';
import { excessGreen } from './excess-green.ts';

/**
 * Excess green minus excess red (1.4r - g of the chromatic coordinates): above 0 for plants.
 *
 * Reference: Meyer and Camargo Neto (2008), Verification of color vegetation indices for automated crop imaging
 * applications, Computers and Electronics in Agriculture 63(2), 282–293.
 * Example: `excessGreenMinusRed(0, 255, 0)` is 3.
 */
export function excessGreenMinusRed(red: number, green: number, blue: number): number {
  const sum = red + green + blue;
  const excessRed = sum === 0 ? 0 : (1.4 * red - green) / sum;
  return excessGreen(red, green, blue) - excessRed;
}

/** Canopy where excess green is greater than excess red; the index needs no threshold of the photo's own. */
export function cutByExcessGreenMinusRed({ width, height, data }: Raster): Mask {
  const canopy = new Uint8Array(width * height);
  for (let i = 0; i < canopy.length; i++) {
    const [red, green, blue] = [data[3 * i] as number, data[3 * i + 1] as number, data[3 * i + 2] as number];
    canopy[i] = excessGreenMinusRed(red, green, blue) > 0 ? 1 : 0;
  }
  return { width, height, data: canopy };
}
