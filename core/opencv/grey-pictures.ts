import type { Keep } from './door.ts';
import type { Mat, OpenCv } from './typings.ts';

/** One byte a pixel, row by row. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

export function matOfGrey(cv: OpenCv, keep: Keep, { width, height, data }: GreyPicture): Mat {
  const mat = keep(new cv.Mat(height, width, cv.CV_8UC1));
  mat.data.set(data);
  return mat;
}
