import type { LabPicture } from '../raster/lab.ts';

/** Coefficients of 1, x, y, x², xy, y² with x and y running from -1 to 1 over the picture. */
type Surface = readonly number[];

/** A smooth colour over the picture: one surface for each of L*, a* and b*. */
export type ColourSurface = readonly [Surface, Surface, Surface];

const TERMS = 6;
const FIT_ROUNDS = 6;

/**
 * Fits a full quadratic in x and y to each of L*, a* and b* at the given pixels: iteratively reweighted least squares
 * with Tukey's biweight, one weight for the three channels together, from a median start.
 */
export function fitSurfaces(picture: LabPicture, places: readonly number[]): ColourSurface {
  const channels = [picture.l, picture.a, picture.b] as const;
  const weights = new Float64Array(places.length).fill(1);
  // A median start keeps the first round from being bent by what is not backdrop.
  let surfaces = channels.map((channel) => flatSurface(places.map((i) => channel[i] as number)));
  for (let round = 0; round < FIT_ROUNDS; round++) {
    const residuals = places.map((i) => {
      const [l, a, b] = surfaces.map((surface) => surfaceAt(surface, picture, i)) as [number, number, number];
      return Math.hypot(
        (picture.l[i] as number) - l,
        (picture.a[i] as number) - a,
        (picture.b[i] as number) - b,
      );
    });
    const cut = Math.max(round === 0 ? 12 : 4, 5 * median(residuals));
    residuals.forEach((residual, k) => {
      weights[k] = residual < cut ? (1 - (residual / cut) ** 2) ** 2 : 0;
    });
    surfaces = channels.map((channel) => leastSquares(picture, places, weights, channel));
  }
  return surfaces as unknown as ColourSurface;
}

function leastSquares(
  picture: LabPicture,
  places: readonly number[],
  weights: Float64Array,
  channel: Float32Array,
): Surface {
  const normal = Array.from({ length: TERMS }, () => new Float64Array(TERMS + 1));
  places.forEach((i, k) => {
    const weight = weights[k] as number;
    if (weight === 0) return;
    const terms = termsAt(picture, i);
    for (let row = 0; row < TERMS; row++) {
      const line = normal[row] as Float64Array;
      const weighted = weight * (terms[row] as number);
      for (let col = 0; col < TERMS; col++)
        line[col] = (line[col] as number) + weighted * (terms[col] as number);
      line[TERMS] = (line[TERMS] as number) + weighted * (channel[i] as number);
    }
  });
  return solveByElimination(normal);
}

/** Gauss-Jordan with the largest pivot; a ridge of 1e-6 keeps a strip of one colour solvable. */
function solveByElimination(rows: Float64Array[]): number[] {
  const size = rows.length;
  for (let k = 0; k < size; k++)
    (rows[k] as Float64Array)[k] = ((rows[k] as Float64Array)[k] as number) + 1e-6;
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let r = k + 1; r < size; r++) {
      if (Math.abs(cell(rows, r, k)) > Math.abs(cell(rows, pivot, k))) pivot = r;
    }
    [rows[k], rows[pivot]] = [rows[pivot] as Float64Array, rows[k] as Float64Array];
    for (let r = 0; r < size; r++) {
      if (r === k) continue;
      const factor = cell(rows, r, k) / cell(rows, k, k);
      const line = rows[r] as Float64Array;
      for (let c = k; c <= size; c++) line[c] = (line[c] as number) - factor * cell(rows, k, c);
    }
  }
  return rows.map((row, k) => (row[size] as number) / (row[k] as number));
}

function cell(rows: readonly Float64Array[], row: number, column: number): number {
  return (rows[row] as Float64Array)[column] as number;
}

/** A surface's value at pixel `i`. */
export function surfaceAt(surface: Surface, picture: LabPicture, i: number): number {
  const [c0 = 0, cx = 0, cy = 0, cxx = 0, cxy = 0, cyy = 0] = surface;
  const { x, y } = unitPlace(picture, i);
  return c0 + x * (cx + cxx * x + cxy * y) + y * (cy + cyy * y);
}

function termsAt(picture: LabPicture, i: number): number[] {
  const { x, y } = unitPlace(picture, i);
  return [1, x, y, x * x, x * y, y * y];
}

function unitPlace(picture: LabPicture, i: number): { x: number; y: number } {
  const row = Math.floor(i / picture.width);
  return {
    x: (2 * (i - row * picture.width)) / picture.width - 1,
    y: (2 * row) / picture.height - 1,
  };
}

function flatSurface(values: number[]): Surface {
  return [median(values), 0, 0, 0, 0, 0];
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
