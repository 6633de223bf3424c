import type { LabPicture } from '../raster/lab.ts';

/**
 * What of the empty photo's colours within `reachPx` (a square) comes nearest to what is seen, channel by channel, so that
 * detail which moved by a px does not count as change.
 *
 * @param empty of the seen picture's size
 */
export function nearestWithin(seen: LabPicture, empty: LabPicture, reachPx: number): LabPicture {
  const { width, height } = empty;
  return {
    width,
    height,
    l: heldWithin(seen.l, empty.l, empty, reachPx),
    a: heldWithin(seen.a, empty.a, empty, reachPx),
    b: heldWithin(seen.b, empty.b, empty, reachPx),
  };
}

/** Each value held between the lowest and the highest of the other plane within `reachPx` of it. */
function heldWithin(
  values: Float32Array,
  plane: Float32Array,
  { width, height }: { readonly width: number; readonly height: number },
  reachPx: number,
): Float32Array {
  const held = values.slice();
  // Lowest and highest of each column's part within reach of the row.
  const low = new Float32Array(width);
  const high = new Float32Array(width);
  for (let y = 0; y < height; y++) {
    const top = Math.max(0, y - reachPx);
    const bottom = Math.min(height - 1, y + reachPx);
    low.set(plane.subarray(top * width, (top + 1) * width));
    high.set(low);
    for (let row = top + 1; row <= bottom; row++) {
      for (let x = 0, i = row * width; x < width; x++, i++) {
        const value = plane[i] as number;
        if (value < (low[x] as number)) low[x] = value;
        if (value > (high[x] as number)) high[x] = value;
      }
    }
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const value = held[i] as number;
      // Most lie between those of their own column already.
      if (value < (low[x] as number)) {
        let lowest = low[x] as number;
        const end = Math.min(width - 1, x + reachPx);
        for (let k = Math.max(0, x - reachPx); k <= end; k++) {
          if ((low[k] as number) < lowest) lowest = low[k] as number;
        }
        if (value < lowest) held[i] = lowest;
      } else if (value > (high[x] as number)) {
        let highest = high[x] as number;
        const end = Math.min(width - 1, x + reachPx);
        for (let k = Math.max(0, x - reachPx); k <= end; k++) {
          if ((high[k] as number) > highest) highest = high[k] as number;
        }
        if (value > highest) held[i] = highest;
      }
    }
  }
  return held;
}
