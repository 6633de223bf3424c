import type { Mask, Raster } from '../raster/raster.ts';
import type { Keep, OpenCvDoor } from './door.ts';
import { matOfMask } from './masks.ts';
import type { Mat, OpenCv } from './typings.ts';

/**
 * A raster whose longer side is at most `longerSidePx`, each pixel the mean of those it covers.
 * A raster that is small enough is handed back as it is.
 */
export function shrinkRaster(door: OpenCvDoor, raster: Raster, longerSidePx: number): Raster {
  const factor = longerSidePx / Math.max(raster.width, raster.height);
  if (factor >= 1) return raster;
  const known = copies.get(raster) ?? new Map<number, Raster>();
  copies.set(raster, known);
  const copy = known.get(longerSidePx) ?? shrunk(door, raster, factor);
  known.set(longerSidePx, copy);
  return copy;
}

/** Copies by their longer side, kept as long as the raster: a stand's picture is shrunk anew for no photo. */
const copies = new WeakMap<Raster, Map<number, Raster>>();

function shrunk(door: OpenCvDoor, raster: Raster, factor: number): Raster {
  const width = Math.max(1, Math.round(raster.width * factor));
  const height = Math.max(1, Math.round(raster.height * factor));
  return resizeRaster(door, raster, width, height);
}

/** The raster at exactly this size: means where it shrinks, straight-line between pixels where it grows. */
export function resizeRaster(door: OpenCvDoor, raster: Raster, width: number, height: number): Raster {
  if (raster.width === width && raster.height === height) return raster;
  return door.use((cv, keep) => {
    const to = keep(new cv.Mat());
    const manner = width < raster.width ? cv.INTER_AREA : cv.INTER_LINEAR;
    cv.resize(matOfRaster(cv, keep, raster), to, new cv.Size(width, height), 0, 0, manner);
    return { width, height, data: to.data.slice() };
  });
}

/** One number a pixel, resized straight-line between pixels. */
export function resizePlane(
  door: OpenCvDoor,
  plane: Float32Array,
  from: { readonly width: number; readonly height: number },
  to: { readonly width: number; readonly height: number },
): Float32Array {
  if (from.width === to.width && from.height === to.height) return plane;
  return door.use((cv, keep) => {
    const target = keep(new cv.Mat());
    const source = matOfPlane(cv, keep, plane, from.width, from.height);
    const manner = to.width < from.width ? cv.INTER_AREA : cv.INTER_LINEAR;
    cv.resize(source, target, new cv.Size(to.width, to.height), 0, 0, manner);
    return target.data32F.slice();
  });
}

/** A mask at another size, by whichever side of one half the resized coverage falls. */
export function resizeMask(
  door: OpenCvDoor,
  mask: Mask,
  size: { readonly width: number; readonly height: number },
): Mask {
  if (mask.width === size.width && mask.height === size.height) return mask;
  return door.use((cv, keep) => {
    const source = keep(new cv.Mat(mask.height, mask.width, cv.CV_8UC1));
    const coverage = source.data;
    for (let i = 0; i < coverage.length; i++) coverage[i] = 255 * (mask.data[i] as number);
    const target = keep(new cv.Mat());
    const manner = size.width < mask.width ? cv.INTER_AREA : cv.INTER_LINEAR;
    cv.resize(source, target, new cv.Size(size.width, size.height), 0, 0, manner);
    cv.threshold(target, target, 127, 1, cv.THRESH_BINARY);
    return { width: size.width, height: size.height, data: target.data.slice() };
  });
}

/** Gaussian blur of one number a pixel; the border repeats its last pixel. */
export function blurPlane(
  door: OpenCvDoor,
  plane: Float32Array,
  size: { readonly width: number; readonly height: number },
  sigmaPx: number,
): Float32Array {
  return door.use((cv, keep) => {
    const to = keep(new cv.Mat());
    const side = 2 * Math.ceil(sigmaPx * 2.5) + 1;
    const from = matOfPlane(cv, keep, plane, size.width, size.height);
    cv.GaussianBlur(from, to, new cv.Size(side, side), sigmaPx, sigmaPx, cv.BORDER_REPLICATE);
    return to.data32F.slice();
  });
}

/** Mean over a square of `2 * radiusPx + 1` pixels a side; the border repeats its last pixel. */
export function meanPlane(
  door: OpenCvDoor,
  plane: Float32Array,
  size: { readonly width: number; readonly height: number },
  radiusPx: number,
): Float32Array {
  return door.use((cv, keep) => {
    const to = keep(new cv.Mat());
    const side = 2 * Math.round(radiusPx) + 1;
    const from = matOfPlane(cv, keep, plane, size.width, size.height);
    cv.blur(from, to, new cv.Size(side, side), new cv.Point(-1, -1), cv.BORDER_REPLICATE);
    return to.data32F.slice();
  });
}

/** Largest value within a square of `2 * radiusPx + 1` pixels a side. */
export function highestNearby(
  door: OpenCvDoor,
  plane: Float32Array,
  size: { readonly width: number; readonly height: number },
  radiusPx: number,
): Float32Array {
  return door.use((cv, keep) => {
    const side = 2 * radiusPx + 1;
    const square = keep(cv.getStructuringElement(cv.MORPH_RECT, new cv.Size(side, side)));
    const to = keep(new cv.Mat());
    cv.dilate(matOfPlane(cv, keep, plane, size.width, size.height), to, square);
    return to.data32F.slice();
  });
}

const GRAB_CUT_SEED = 1;

/**
 * One GrabCut (Rother, Kolmogorov, Blake 2004) from a starting mask with OpenCV's four values:
 * 0 surely outside, 1 surely inside, 2 probably outside, 3 probably inside. Returns the mask in the same values.
 *
 * It draws chances for its first colour clusters; they are seeded, so that the same picture gives the same mask.
 */
export function grabCut(door: OpenCvDoor, picture: Raster, start: Uint8Array, rounds: number): Uint8Array {
  return door.use((cv, keep) => {
    const mask = matOfMask(cv, keep, { width: picture.width, height: picture.height, data: start });
    const [outside, inside] = [keep(new cv.Mat()), keep(new cv.Mat())];
    const everything = new cv.Rect(0, 0, picture.width, picture.height);
    const colours = matOfRaster(cv, keep, picture);
    cv.setRNGSeed(GRAB_CUT_SEED);
    cv.grabCut(colours, mask, everything, outside, inside, rounds, cv.GC_INIT_WITH_MASK);
    return mask.data.slice();
  });
}

export function matOfRaster(cv: OpenCv, keep: Keep, raster: Raster): Mat {
  const mat = keep(new cv.Mat(raster.height, raster.width, cv.CV_8UC3));
  mat.data.set(raster.data);
  return mat;
}

export function matOfPlane(cv: OpenCv, keep: Keep, plane: Float32Array, width: number, height: number): Mat {
  const mat = keep(new cv.Mat(height, width, cv.CV_32FC1));
  mat.data32F.set(plane);
  return mat;
}
