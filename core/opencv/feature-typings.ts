import type { Mat, Size } from './typings.ts';

/** The part of OpenCV that finds and follows corners. */
export interface OpenCvFeatures {
  readonly CV_32FC2: number;

  findHomography(from: Mat, to: Mat, method: number): Mat;
  goodFeaturesToTrack(
    picture: Mat,
    corners: Mat,
    most: number,
    quality: number,
    leastDistancePx: number,
    mask: Mat,
    blockSize: number,
    harris: boolean,
    harrisK: number,
  ): void;
  calcOpticalFlowPyrLK(
    before: Mat,
    after: Mat,
    pointsBefore: Mat,
    pointsAfter: Mat,
    status: Mat,
    error: Mat,
    window: Size,
    levels: number,
    criteria: object,
  ): void;
}
