import { requirePositiveInteger } from '../errors/expect.ts';

/**
 * An upright picture in memory: 8-bit sRGB, three bytes a pixel, row by row from the top-left corner.
 *
 * `data.length === 3 * width * height`. Pixel centres lie at +0.5.
 */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/**
 * A yes/no picture: one byte a pixel, 1 inside and 0 outside.
 *
 * `data.length === width * height`.
 */
export interface Mask {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** A point or vector in px: x right, y down. */
export type PointPx = readonly [x: number, y: number];

/**
 * A photo ready for measuring: the raster may be a reduced copy, so the size of the photo as stored upright
 * travels with it and results are given in that photo's px.
 */
export interface UprightPhoto {
  readonly raster: Raster;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** An all-outside mask of the given size in px. Throws a `RangeError` when a side is not a positive integer. */
export function emptyMask(width: number, height: number): Mask {
  requirePositiveInteger(width, 'width');
  requirePositiveInteger(height, 'height');
  return { width, height, data: new Uint8Array(width * height) };
}

/** Number of pixels inside the mask. */
export function maskArea({ data }: Mask): number {
  let area = 0;
  for (let i = 0; i < data.length; i++) area += data[i] as number;
  return area;
}
