import type { Window } from '../window.ts';

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
 *
 * Pixels of the result inside `hole` are left at 0, for a caller who fills them otherwise.
 */
export function resamplePlane(plane: Plane, width: number, height: number, hole?: Window): Float32Array {
  const narrow = acrossRows(plane, width);
  const { first, weights, taps } = weightsFor(plane.height, height);
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const within = hole !== undefined && y >= hole.top && y < hole.top + hole.height;
    const spans = within ? [0, hole.left, hole.left + hole.width, width] : [0, width];
    for (let span = 0; span < spans.length; span += 2) {
      blendRows(out, y, narrow, width, [spans[span] as number, spans[span + 1] as number]);
    }
  }
  return out;

  function blendRows(
    to: Float32Array,
    y: number,
    from: Float32Array,
    row: number,
    [low, high]: number[],
  ): void {
    const end = y * row + (high as number);
    for (let k = 0; k < taps; k += 2) {
      const one = weights[y * taps + k] as number;
      const two = weights[y * taps + k + 1] as number;
      if (one === 0 && two === 0) continue;
      let at = ((first[y] as number) + k) * row + (low as number);
      // the last row has no lower neighbour; its weight is 0 there
      const below = two === 0 ? 0 : row;
      if (k === 0) {
        for (let i = y * row + (low as number); i < end; i++, at++) {
          to[i] = one * (from[at] as number) + two * (from[at + below] as number);
        }
        continue;
      }
      for (let i = y * row + (low as number); i < end; i++, at++) {
        to[i] = (to[i] as number) + one * (from[at] as number) + two * (from[at + below] as number);
      }
    }
  }
}

/** Every row of the plane at the new width. */
function acrossRows({ data, height, start, step, row, width: from }: Plane, width: number): Float32Array {
  const { first, weights, taps } = weightsFor(from, width);
  const out = new Float32Array(width * height);
  const line = new Float32Array(from + taps); // zeros behind the last pixel meet weights of 0
  for (let y = 0; y < height; y++) {
    for (let x = 0, at = start + y * row; x < from; x++, at += step) line[x] = data[at] as number;
    if (taps === 2) {
      for (let x = 0, w = 0, to = y * width; x < width; x++, w += 2, to++) {
        const at = first[x] as number;
        out[to] =
          (weights[w] as number) * (line[at] as number) +
          (weights[w + 1] as number) * (line[at + 1] as number);
      }
      continue;
    }
    for (let x = 0, w = 0; x < width; x++) {
      let at = first[x] as number;
      let sum = 0;
      for (const end = w + taps; w < end; w += 2, at += 2) {
        sum += (weights[w] as number) * (line[at] as number);
        sum += (weights[w + 1] as number) * (line[at + 1] as number);
      }
      out[y * width + x] = sum;
    }
  }
  return out;
}

/** For each new pixel the first old one it is made of, and the weights of that and the next: `taps` in all, an even number. */
interface Weights {
  readonly first: Int32Array;
  readonly weights: Float32Array;
  readonly taps: number;
}

/** Which of `from` pixels each of `to` pixels is made of; beyond the border the border counts. */
function weightsFor(from: number, to: number): Weights {
  const scale = from / to;
  const reach = Math.max(1, scale);
  const taps = 2 * Math.ceil(reach);
  const first = new Int32Array(to);
  const weights = new Float32Array(to * taps);
  for (let at = 0; at < to; at++) {
    const middle = (at + 0.5) * scale - 0.5;
    const low = Math.max(0, Math.floor(middle - reach) + 1);
    first[at] = low;
    let sum = 0;
    for (let k = 0; k < taps && low + k < from; k++) {
      const weight = Math.max(0, 1 - Math.abs(low + k - middle) / reach);
      weights[at * taps + k] = weight;
      sum += weight;
    }
    for (let k = 0; k < taps; k++) weights[at * taps + k] = (weights[at * taps + k] as number) / sum;
  }
  return { first, weights, taps };
}
