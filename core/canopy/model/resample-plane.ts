/** One plane of numbers inside a larger array: a colour of a raster, a part of it, or a plane of shares. */
export interface Plane {
  readonly data: Uint8Array | Float32Array;
  readonly width: number;
  readonly height: number;
  /** Where the plane's first number lies. */
  readonly start: number;
  /** From one number to its right neighbour, and to the one below. */
  readonly step: number;
  readonly row: number;
}

/**
 * The plane at another size by the triangle filter: straight lines between pixel middles when it grows, means
 * over the widened triangle when it shrinks, so that fine leaves do not flicker. Every weight set sums to 1.
 */
export function resamplePlane(plane: Plane, width: number, height: number): Float32Array {
  const across = weightsFor(plane.width, width);
  const down = weightsFor(plane.height, height);
  const narrow = new Float32Array(width * plane.height);
  for (let y = 0; y < plane.height; y++) {
    const from = plane.start + y * plane.row;
    for (let x = 0; x < width; x++) {
      const { first, weights } = across[x] as Weights;
      let sum = 0;
      for (let k = 0; k < weights.length; k++) {
        sum += (weights[k] as number) * (plane.data[from + (first + k) * plane.step] as number);
      }
      narrow[y * width + x] = sum;
    }
  }
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const { first, weights } = down[y] as Weights;
    const to = y * width;
    for (let k = 0; k < weights.length; k++) {
      const weight = weights[k] as number;
      const from = (first + k) * width;
      for (let x = 0; x < width; x++)
        out[to + x] = (out[to + x] as number) + weight * (narrow[from + x] as number);
    }
  }
  return out;
}

interface Weights {
  readonly first: number;
  readonly weights: Float64Array;
}

/** For each of `to` pixels, which of `from` pixels it is made of; beyond the border the border counts. */
function weightsFor(from: number, to: number): Weights[] {
  const scale = from / to;
  const reach = Math.max(1, scale);
  return Array.from({ length: to }, (_, at) => {
    const middle = (at + 0.5) * scale - 0.5;
    const first = Math.max(0, Math.ceil(middle - reach));
    const last = Math.min(from - 1, Math.floor(middle + reach));
    const weights = Float64Array.from(
      { length: last - first + 1 },
      (_, k) => Math.max(0, 1 - Math.abs(first + k - middle) / reach) + 1e-12,
    );
    const sum = weights.reduce((all, weight) => all + weight, 0);
    return { first, weights: weights.map((weight) => weight / sum) };
  });
}
