import { LINEAR_OF_BYTE } from '../../core/raster/lab.ts';
import type { Raster } from '../../core/raster/raster.ts';

/**
 * The photo as if `factor` times as much light had fallen on the sensor: in linear light, clipped at white.
 *
 * Reference: IEC 61966-2-1 (sRGB).
 */
export function exposeRaster({ width, height, data }: Raster, factor: number): Raster {
  const byteOf = Uint8Array.from(LINEAR_OF_BYTE, (linear) => {
    const light = Math.min(1, linear * factor);
    const coded = light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
    return Math.round(255 * coded);
  });
  return { width, height, data: data.map((byte) => byteOf[byte] as number) };
}
