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
  const channels = [picture.l, picture.a, picture.b].map((channel) =>
    Float64Array.from(places, (i) => channel[i] as number),
  );
  const terms = places.map((i) => termsAt(picture, i));
  const weights = new Float64Array(places.length);
  // A median start keeps the first round from being bent by what is not backdrop.
  let surfaces: Surface[] = channels.map((channel) => [median(channel), 0, 0, 0, 0, 0]);
  for (let round = 0; round < FIT_ROUNDS; round++) {
    const residuals = Float64Array.from(terms, (at, k) =>
      Math.hypot(...surfaces.map((surface, c) => (channels[c]?.[k] as number) - dot(surface, at))),
    );
    const cut = Math.max(round === 0 ? 12 : 4, 5 * median(residuals));
    residuals.forEach((residual, k) => {
      weights[k] = residual < cut ? (1 - (residual / cut) ** 2) ** 2 : 0;
    });
    surfaces = leastSquares(terms, weights, channels);
  }
  return surfaces as unknown as ColourSurface;
}

function dot(surface: Surface, terms: readonly number[]): number {
  let sum = 0;
  for (let k = 0; k < TERMS; k++) sum += (surface[k] as number) * (terms[k] as number);
  return sum;
}

/** Weighted least squares, all channels on the one normal matrix. */
function leastSquares(
  terms: readonly (readonly number[])[],
  weights: Float64Array,
  channels: readonly Float64Array[],
): Surface[] {
  const normal = Array.from({ length: TERMS }, () => new Float64Array(TERMS + channels.length));
  terms.forEach((at, k) => {
    const weight = weights[k] as number;
    if (weight === 0) return;
    normal.forEach((line, row) => {
      const weighted = weight * (at[row] as number);
      for (let col = 0; col < TERMS; col++)
        line[col] = (line[col] as number) + weighted * (at[col] as number);
      channels.forEach((channel, c) => {
        line[TERMS + c] = (line[TERMS + c] as number) + weighted * (channel[k] as number);
      });
    });
  });
  return solveByElimination(normal);
}

/** Gauss-Jordan with the largest pivot; a ridge of 1e-6 keeps a strip of one colour solvable. */
function solveByElimination(rows: Float64Array[]): number[][] {
  const size = rows.length;
  const wide = rows[0]?.length ?? size;
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
      for (let c = k; c < wide; c++) line[c] = (line[c] as number) - factor * cell(rows, k, c);
    }
  }
  return Array.from({ length: wide - size }, (_, c) =>
    rows.map((row, k) => (row[size + c] as number) / (row[k] as number)),
  );
}

function cell(rows: readonly Float64Array[], row: number, column: number): number {
  return (rows[row] as Float64Array)[column] as number;
}

/** A surface's value at pixel `i`. */
export function surfaceAt(surface: Surface, { width, height }: LabPicture, i: number): number {
  const [c0 = 0, cx = 0, cy = 0, cxx = 0, cxy = 0, cyy = 0] = surface;
  const row = Math.floor(i / width);
  const x = (2 * (i - row * width)) / width - 1;
  const y = (2 * row) / height - 1;
  return c0 + x * (cx + cxx * x + cxy * y) + y * (cy + cyy * y);
}

function termsAt({ width, height }: LabPicture, i: number): number[] {
  const row = Math.floor(i / width);
  const x = (2 * (i - row * width)) / width - 1;
  const y = (2 * row) / height - 1;
  return [1, x, y, x * x, x * y, y * y];
}

function median(values: Float64Array): number {
  return values.slice().sort()[values.length >> 1] ?? 0;
}
