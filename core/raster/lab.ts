import type { Raster } from './raster.ts';

/** A picture in CIE L*a*b* (D65): one number a pixel for each of L (0–100), a and b. */
export interface LabPicture {
  readonly width: number;
  readonly height: number;
  readonly l: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
}

/** What linear red, green and blue are multiplied by before they are read. */
export type Gains = readonly [red: number, green: number, blue: number];

export const NO_GAINS: Gains = [1, 1, 1];

/** sRGB byte to linear light 0–1 (IEC 61966-2-1). */
export const LINEAR_OF_BYTE: Float32Array = Float32Array.from({ length: 256 }, (_, byte) => {
  const value = byte / 255;
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
});

/** Steps of the cube-root table over 0–1; straight-line between steps keeps Lab within 0.002. */
const STEPS = 16_384;
const LIGHTNESS_CURVE: Float32Array = Float32Array.from({ length: STEPS + 2 }, (_, step) =>
  lightnessCurve(step / STEPS),
);

/**
 * A raster in CIE L*a*b* with the D65 white, exact to 0.02 (its rounding is float32 and a table of the cube root).
 *
 * @param gains brings another light to this one: applied to linear light, so L* may pass 100
 *
 * Reference: IEC 61966-2-1 (sRGB); CIE 15:2018 §8.2.1. White D65 x = 0.3127, y = 0.3290.
 * Example: `labOfRaster({ width: 1, height: 1, data: Uint8Array.of(255, 0, 0) }).l[0]` is 53.24.
 */
export function labOfRaster(raster: Raster, gains: Gains = NO_GAINS): LabPicture {
  const { width, height, data } = raster;
  const count = width * height;
  const [l, a, b] = [new Float32Array(count), new Float32Array(count), new Float32Array(count)];
  const [reds, greens, blues] = gains.map((gain) => LINEAR_OF_BYTE.map((value) => gain * value)) as [
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  for (let i = 0, byte = 0; i < count; i++, byte += 3) {
    const red = reds[data[byte] as number] as number;
    const green = greens[data[byte + 1] as number] as number;
    const blue = blues[data[byte + 2] as number] as number;
    // Linear sRGB to XYZ, each row already divided by the D65 white.
    const fx = tabledCurve(0.43388 * red + 0.376229 * green + 0.189891 * blue);
    const fy = tabledCurve(0.212639 * red + 0.715169 * green + 0.072192 * blue);
    const fz = tabledCurve(0.01775 * red + 0.109458 * green + 0.872799 * blue);
    l[i] = 116 * fy - 16;
    a[i] = 500 * (fx - fy);
    b[i] = 200 * (fy - fz);
  }
  return { width, height, l, a, b };
}

function tabledCurve(value: number): number {
  if (value > 1) return lightnessCurve(value);
  const place = value * STEPS;
  const step = place | 0;
  const low = LIGHTNESS_CURVE[step] as number;
  return low + (place - step) * ((LIGHTNESS_CURVE[step + 1] as number) - low);
}

function lightnessCurve(value: number): number {
  return value > 216 / 24389 ? Math.cbrt(value) : ((24389 / 27) * value + 16) / 116;
}
