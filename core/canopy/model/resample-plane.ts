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
  const narrow = acrossRows(plane, width);
  const { first, count, weights, most } = weightsFor(plane.height, height);
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const row = out.subarray(y * width, (y + 1) * width);
    for (let k = 0; k < (count[y] as number); k++) {
      const weight = weights[y * most + k] as number;
      const from = ((first[y] as number) + k) * width;
      for (let x = 0; x < width; x++) row[x] = (row[x] as number) + weight * (narrow[from + x] as number);
    }
  }
  return out;
}

/** Every row of the plane at the new width. */
function acrossRows({ data, height, start, step, row, width: from }: Plane, width: number): Float32Array {
  const { first, count, weights, most } = weightsFor(from, width);
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const rowStart = start + y * row;
    for (let x = 0; x < width; x++) {
      let at = rowStart + (first[x] as number) * step;
      const begin = x * most;
      const end = begin + (count[x] as number);
      let sum = 0;
      for (let k = begin; k < end; k++, at += step) sum += (weights[k] as number) * (data[at] as number);
      out[y * width + x] = sum;
    }
  }
  return out;
}

/** For each new pixel: the first old one it is made of, how many there are, and their weights, `most` a pixel. */
interface Weights {
  readonly first: Int32Array;
  readonly count: Int32Array;
  readonly weights: Float64Array;
  readonly most: number;
}

/** Which of `from` pixels each of `to` pixels is made of; beyond the border the border counts. */
function weightsFor(from: number, to: number): Weights {
  const scale = from / to;
  const reach = Math.max(1, scale);
  const most = Math.floor(2 * reach) + 1;
  const first = new Int32Array(to);
  const count = new Int32Array(to);
  const weights = new Float64Array(to * most);
  for (let at = 0; at < to; at++) {
    const middle = (at + 0.5) * scale - 0.5;
    const low = Math.max(0, Math.ceil(middle - reach));
    const high = Math.min(from - 1, Math.floor(middle + reach));
    first[at] = low;
    count[at] = high - low + 1;
    let sum = 0;
    for (let k = low; k <= high; k++) {
      const weight = 1 - Math.abs(k - middle) / reach + 1e-12;
      weights[at * most + k - low] = weight;
      sum += weight;
    }
    for (let k = 0; k <= high - low; k++) weights[at * most + k] = (weights[at * most + k] as number) / sum;
  }
  return { first, count, weights, most };
}
