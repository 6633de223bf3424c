import type { OpenCvFeatures } from './feature-typings.ts';

/** The part of OpenCV that Rondure uses; the library's own typings need a DOM and are wrong in places. */
export interface OpenCvObject {
  delete(): void;
}

export interface Mat extends OpenCvObject {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32S: Int32Array;
  readonly data32F: Float32Array;
  readonly data64F: Float64Array;
  setTo(scalar: readonly number[]): void;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface OpenCv extends OpenCvFeatures {
  readonly Mat: { new (): Mat; new (rows: number, cols: number, type: number): Mat };
  readonly Size: new (width: number, height: number) => Size;
  readonly Point: new (x: number, y: number) => { readonly x: number; readonly y: number };
  readonly Scalar: new (...values: number[]) => readonly number[];
  readonly TermCriteria: new (type: number, maxCount: number, epsilon: number) => object;
  readonly Rect: new (x: number, y: number, width: number, height: number) => object;

  readonly CV_8UC1: number;
  readonly CV_8UC3: number;
  readonly CV_32SC1: number;
  readonly CV_32FC1: number;
  readonly INTER_AREA: number;
  readonly THRESH_BINARY: number;
  readonly INTER_LINEAR: number;
  readonly BORDER_REPLICATE: number;
  readonly MORPH_RECT: number;
  readonly MORPH_ELLIPSE: number;
  readonly MORPH_CLOSE: number;
  readonly GC_INIT_WITH_MASK: number;
  readonly WARP_INVERSE_MAP: number;
  readonly DIST_L2: number;
  readonly DIST_MASK_PRECISE: number;
  readonly TermCriteria_COUNT: number;
  readonly TermCriteria_EPS: number;
  readonly MOTION_TRANSLATION: number;
  readonly BORDER_CONSTANT: number;
  readonly CV_64FC1: number;

  exceptionFromPtr(address: number): { readonly msg: string };
  setRNGSeed(seed: number): void;
  resize(from: Mat, to: Mat, size: Size, fx: number, fy: number, interpolation: number): void;
  threshold(from: Mat, to: Mat, limit: number, above: number, kind: number): number;
  GaussianBlur(from: Mat, to: Mat, kernel: Size, sigmaX: number, sigmaY: number, border: number): void;
  blur(
    from: Mat,
    to: Mat,
    kernel: Size,
    anchor: { readonly x: number; readonly y: number },
    border: number,
  ): void;
  getStructuringElement(shape: number, size: Size): Mat;
  dilate(from: Mat, to: Mat, kernel: Mat): void;
  erode(from: Mat, to: Mat, kernel: Mat): void;
  morphologyEx(from: Mat, to: Mat, operation: number, kernel: Mat): void;
  connectedComponentsWithStats(
    from: Mat,
    labels: Mat,
    stats: Mat,
    centroids: Mat,
    connectivity: number,
    labelType: number,
  ): number;
  distanceTransform(from: Mat, to: Mat, distanceType: number, maskSize: number): void;
  grabCut(
    picture: Mat,
    mask: Mat,
    rect: object,
    backdropModel: Mat,
    objectModel: Mat,
    rounds: number,
    mode: number,
  ): void;
  findTransformECC(
    template: Mat,
    input: Mat,
    warp: Mat,
    motion: number,
    criteria: object,
    mask: Mat,
    gaussianSize: number,
  ): number;
  warpAffine(
    from: Mat,
    to: Mat,
    warp: Mat,
    size: Size,
    flags: number,
    border: number,
    value: readonly number[],
  ): void;
}
