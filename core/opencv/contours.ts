import type { OpenCvDoor } from './door.ts';
import type { OpenCv } from './typings.ts';

/** What of OpenCV only this file uses. */
interface ContourCv {
  readonly MatVector: new () => MatVector;
  readonly ADAPTIVE_THRESH_MEAN_C: number;
  readonly THRESH_BINARY_INV: number;
  readonly RETR_TREE: number;
  readonly CHAIN_APPROX_NONE: number;
  adaptiveThreshold(
    from: object,
    to: object,
    most: number,
    manner: number,
    type: number,
    windowPx: number,
    below: number,
  ): void;
  findContours(from: object, contours: MatVector, nesting: object, mode: number, method: number): void;
}

interface MatVector {
  delete(): void;
  size(): number;
  get(at: number): { readonly data32S: Int32Array; delete(): void };
}

/** The border of a connected dark part, or of a hole in one, and the border right around it. */
export interface NestedContour {
  /** Pixel indices x, y, x, y … along the border; add one half for pixel centres. */
  readonly points: Int32Array;
  /** Index of the contour around it, -1 for none. */
  readonly parent: number;
}

export interface ContourBounds {
  readonly windowPx: number;
  readonly below: number;
  readonly leastPoints: number;
  readonly leastNested: number;
}

/**
 * Borders of what is darker than its surroundings, and of the holes in it, and in turn of what lies in the holes
 * (Suzuki, Abe 1985).
 *
 * @param grey one byte a pixel, row by row
 * @param windowPx side of the square whose mean a pixel is held against; odd, 3 or more
 * @param below how much darker than that mean a pixel must be, in steps of 255
 * @param leastPoints shorter borders are given with no points, so that indices stay right
 * @param leastNested so are those that lie in no row of this many borders, one inside the other: noise makes
 *   thousands of them
 */
export function nestedContours(
  door: OpenCvDoor,
  grey: { readonly width: number; readonly height: number; readonly data: Uint8Array },
  { windowPx, below, leastPoints, leastNested }: ContourBounds,
): NestedContour[] {
  return door.use((cv, keep) => {
    const more = cv as OpenCv & ContourCv;
    const from = keep(new cv.Mat(grey.height, grey.width, cv.CV_8UC1));
    from.data.set(grey.data);
    const [dark, nesting] = [keep(new cv.Mat()), keep(new cv.Mat())];
    const manner = more.ADAPTIVE_THRESH_MEAN_C;
    more.adaptiveThreshold(from, dark, 255, manner, more.THRESH_BINARY_INV, windowPx, below);
    const contours = keep(new more.MatVector());
    more.findContours(dark, contours, nesting, more.RETR_TREE, more.CHAIN_APPROX_NONE);
    const parents = Array.from({ length: contours.size() }, (_, k) => nesting.data32S[4 * k + 3] as number);
    return rowLengths(parents).map((nested, k) => {
      const parent = parents[k] as number;
      if (nested < leastNested) return { points: NO_POINTS, parent };
      const contour = contours.get(k);
      const points = contour.data32S.length >= 2 * leastPoints ? contour.data32S.slice() : NO_POINTS;
      contour.delete();
      return { points, parent };
    });
  });
}

/** Of how many borders the longest row through each one is, one inside the other. Parents stand before their children. */
function rowLengths(parents: readonly number[]): number[] {
  const above: number[] = [];
  for (const parent of parents) above.push(parent < 0 ? 1 : (above[parent] as number) + 1);
  const below = parents.map(() => 1);
  for (let k = parents.length - 1; k >= 0; k--) {
    const parent = parents[k] as number;
    if (parent >= 0) below[parent] = Math.max(below[parent] as number, (below[k] as number) + 1);
  }
  return above.map((depth, k) => depth + (below[k] as number) - 1);
}

const NO_POINTS = new Int32Array(0);
