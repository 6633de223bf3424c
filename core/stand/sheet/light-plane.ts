import type { Raster } from '../../raster/raster.ts';

/** One number a pixel, row by row. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array;
}

/** sRGB step to linear light, 0–1 (IEC 61966-2-1). */
export const LINEAR_OF_STEP: Float32Array = Float32Array.from({ length: 256 }, (_, step) => {
  const share = step / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
});

/**
 * Luminance in linear light, 0–1 (ITU-R BT.709 weights).
 *
 * Notes: the lens blurs light, not display steps; only in linear light does an edge's half-way point stay where the
 * edge is.
 */
export function luminancePlane({ width, height, data }: Raster): Plane {
  const light = new Float32Array(width * height);
  for (let i = 0; i < light.length; i++) {
    const red = LINEAR_OF_STEP[data[3 * i] as number] as number;
    const green = LINEAR_OF_STEP[data[3 * i + 1] as number] as number;
    const blue = LINEAR_OF_STEP[data[3 * i + 2] as number] as number;
    light[i] = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  }
  return { width, height, data: light };
}

/** Value at a place in px (pixel centres at +0.5), straight-line between pixels; the border repeats its last pixel. */
export function planeAt({ width, height, data }: Plane, x: number, y: number): number {
  const column = Math.min(Math.max(x - 0.5, 0), width - 1);
  const row = Math.min(Math.max(y - 0.5, 0), height - 1);
  const left = Math.min(Math.floor(column), width - 2);
  const top = Math.min(Math.floor(row), height - 2);
  const [right, down] = [column - left, row - top];
  const at = top * width + left;
  const upper = (data[at] as number) * (1 - right) + (data[at + 1] as number) * right;
  const lower = (data[at + width] as number) * (1 - right) + (data[at + width + 1] as number) * right;
  return upper * (1 - down) + lower * down;
}
