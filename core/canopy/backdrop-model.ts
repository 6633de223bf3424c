import type { LabPicture } from '../raster/lab.ts';

/** The backdrop's colour as it would be seen at every pixel if the plant were not there. */
export interface Backdrop {
  readonly colour: LabPicture;
  /** Robust spread of the border about the model, ΔE (CIE 1976): noise, weave, what the model cannot follow. */
  readonly spread: number;
  /** Share of the border that the model explains, 0–1: below about 0.7 the place is busy, not plain. */
  readonly plainShare: number;
}

/** Coefficients of 1, x, y, x², xy, y² with x and y running from -1 to 1 over the picture. */
type Surface = readonly number[];

const TERMS = 6;
const FIT_ROUNDS = 6;
/** Border strip, share of the shorter side. */
const BORDER_SHARE = 0.04;
/** ΔE beyond which a border pixel counts as not explained. */
const EXPLAINED_DELTA = 7;

/**
 * Fits the backdrop as a smooth surface in L*, a* and b* (a full quadratic in x and y) to the strip along the
 * picture's border, robustly, so that a leaf, a table's edge or the pot reaching the border does not bend it.
 *
 * Works for a backdrop of any colour, near-black and white included, with uneven light. A second, local
 * correction for what a quadratic cannot follow is `followBackdrop`.
 */
export function fitBackdrop(picture: LabPicture): Backdrop {
  const places = borderPlaces(picture);
  const surfaces = fitSurfaces(picture, places);
  const colour = paintSurfaces(picture, surfaces);
  const residuals = places.map((i) => deltaAt(picture, colour, i));
  const explained = residuals.filter((delta) => delta < EXPLAINED_DELTA);
  explained.sort((one, other) => one - other);
  return {
    colour,
    spread: explained[Math.floor(explained.length / 2)] ?? EXPLAINED_DELTA,
    plainShare: explained.length / residuals.length,
  };
}

/** ΔE (CIE 1976) between two pictures at pixel `i`. */
export function deltaAt(one: LabPicture, other: LabPicture, i: number): number {
  const l = (one.l[i] as number) - (other.l[i] as number);
  const a = (one.a[i] as number) - (other.a[i] as number);
  const b = (one.b[i] as number) - (other.b[i] as number);
  return Math.sqrt(l * l + a * a + b * b);
}

/** The backdrop in a window of the full raster; it is smooth, so the nearest pixel of the small copy will do. */
export function stretchBackdrop(
  small: LabPicture,
  full: { readonly width: number; readonly height: number },
  window: { readonly left: number; readonly top: number; readonly width: number; readonly height: number },
): LabPicture {
  const count = window.width * window.height;
  const [l, a, b] = [new Float32Array(count), new Float32Array(count), new Float32Array(count)];
  const columns = Int32Array.from({ length: window.width }, (_, x) =>
    Math.min(small.width - 1, Math.floor(((window.left + x + 0.5) * small.width) / full.width)),
  );
  for (let y = 0, i = 0; y < window.height; y++) {
    const row = Math.min(small.height - 1, Math.floor(((window.top + y + 0.5) * small.height) / full.height));
    for (let x = 0; x < window.width; x++, i++) {
      const from = row * small.width + (columns[x] as number);
      l[i] = small.l[from] as number;
      a[i] = small.a[from] as number;
      b[i] = small.b[from] as number;
    }
  }
  return { width: window.width, height: window.height, l, a, b };
}

/** Every second pixel of the strip along the border. */
function borderPlaces(picture: LabPicture): number[] {
  const { width, height } = picture;
  const strip = Math.max(3, Math.round(BORDER_SHARE * Math.min(width, height)));
  const places: number[] = [];
  for (let y = 0; y < height; y += 2) {
    for (let x = 0; x < width; x += 2) {
      const onBorder = x < strip || y < strip || x >= width - strip || y >= height - strip;
      if (onBorder) places.push(y * width + x);
    }
  }
  return places;
}

/** Iteratively reweighted least squares with Tukey's biweight, one weight for the three channels together. */
function fitSurfaces(picture: LabPicture, places: readonly number[]): [Surface, Surface, Surface] {
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
  return surfaces as [Surface, Surface, Surface];
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

function paintSurfaces(picture: LabPicture, [sl, sa, sb]: readonly [Surface, Surface, Surface]): LabPicture {
  const { width, height } = picture;
  const [l, a, b] = [picture.l, picture.a, picture.b].map((plane) => new Float32Array(plane.length)) as [
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  for (let i = 0; i < l.length; i++) {
    l[i] = surfaceAt(sl, picture, i);
    a[i] = surfaceAt(sa, picture, i);
    b[i] = surfaceAt(sb, picture, i);
  }
  return { width, height, l, a, b };
}

function surfaceAt(surface: Surface, picture: LabPicture, i: number): number {
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
