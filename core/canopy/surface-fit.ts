import type { LabPicture } from '../raster/lab.ts';
import { valueOfRank } from '../raster/value-of-rank.ts';

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
  const terms = termsAt(picture, places);
  const weights = new Float64Array(places.length);
  const residuals = new Float64Array(places.length);
  // A median start keeps the first round from being bent by what is not backdrop.
  let surfaces: Surface[] = channels.map((channel) => [median(channel), 0, 0, 0, 0, 0]);
  for (let round = 0; round < FIT_ROUNDS; round++) {
    const [offL, offA, offB] = channels.map((channel, c) =>
      distancesOff(channel, surfaces[c] as Surface, terms),
    ) as [Float64Array, Float64Array, Float64Array];
    for (let k = 0; k < residuals.length; k++) {
      residuals[k] = Math.hypot(offL[k] as number, offA[k] as number, offB[k] as number);
    }
    const cut = Math.max(round === 0 ? 12 : 4, 5 * median(residuals));
    for (let k = 0; k < residuals.length; k++) {
      const residual = residuals[k] as number;
      weights[k] = residual < cut ? (1 - (residual / cut) ** 2) ** 2 : 0;
    }
    surfaces = leastSquares(terms, weights, channels);
  }
  return surfaces as unknown as ColourSurface;
}

/** How far one channel is from its surface, place by place. */
function distancesOff(channel: Float64Array, surface: Surface, terms: Float64Array): Float64Array {
  const coefficients = Float64Array.from(surface);
  const off = new Float64Array(channel.length);
  for (let k = 0, at = 0; k < off.length; k++, at += TERMS) {
    let value = 0;
    for (let term = 0; term < TERMS; term++)
      value += (coefficients[term] as number) * (terms[at + term] as number);
    off[k] = (channel[k] as number) - value;
  }
  return off;
}

/** Weighted least squares, all channels on the one normal matrix. */
function leastSquares(
  terms: Float64Array,
  weights: Float64Array,
  channels: readonly Float64Array[],
): Surface[] {
  const wide = TERMS + channels.length;
  const normal = new Float64Array(TERMS * wide);
  for (let k = 0, at = 0; k < weights.length; k++, at += TERMS) {
    const weight = weights[k] as number;
    if (weight === 0) continue;
    for (let row = 0, to = 0; row < TERMS; row++) {
      const weighted = weight * (terms[at + row] as number);
      for (let col = 0; col < TERMS; col++, to++)
        normal[to] = (normal[to] as number) + weighted * (terms[at + col] as number);
      for (let c = 0; c < channels.length; c++, to++)
        normal[to] = (normal[to] as number) + weighted * ((channels[c] as Float64Array)[k] as number);
    }
  }
  return solveByElimination(
    Array.from({ length: TERMS }, (_, row) => normal.slice(row * wide, (row + 1) * wide)),
  );
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
  const row = Math.floor(i / width);
  const x = (2 * (i - row * width)) / width - 1;
  const y = (2 * row) / height - 1;
  return (
    (surface[0] as number) +
    x * ((surface[1] as number) + (surface[3] as number) * x + (surface[4] as number) * y) +
    y * ((surface[2] as number) + (surface[5] as number) * y)
  );
}

/** The six terms of every place, one place after the other. */
function termsAt({ width, height }: LabPicture, places: readonly number[]): Float64Array {
  const terms = new Float64Array(TERMS * places.length);
  for (let k = 0, at = 0; k < places.length; k++, at += TERMS) {
    const i = places[k] as number;
    const row = Math.floor(i / width);
    const x = (2 * (i - row * width)) / width - 1;
    const y = (2 * row) / height - 1;
    terms[at] = 1;
    terms[at + 1] = x;
    terms[at + 2] = y;
    terms[at + 3] = x * x;
    terms[at + 4] = x * y;
    terms[at + 5] = y * y;
  }
  return terms;
}

function median(values: Float64Array): number {
  return valueOfRank(values.slice(), values.length >> 1) ?? 0;
}
