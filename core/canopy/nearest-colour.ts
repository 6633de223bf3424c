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
  for (let y = 0, i = 0; y < height; y++) {
    const top = Math.max(0, y - reachPx);
    const bottom = Math.min(height - 1, y + reachPx);
    for (let x = 0; x < width; x++, i++) {
      const value = values[i] as number;
      // The value lies on one side of the other plane's here; one on its far side nearby is enough to let it be.
      let nearest = plane[i] as number;
      if (value === nearest) continue;
      const isAbove = value > nearest;
      const left = Math.max(0, x - reachPx);
      const right = Math.min(width - 1, x + reachPx);
      let isBetween = false;
      for (let row = top; row <= bottom && !isBetween; row++) {
        for (let k = row * width + left; k <= row * width + right; k++) {
          const other = plane[k] as number;
          if (isAbove ? other <= nearest : other >= nearest) continue;
          nearest = other;
          if (isAbove ? other >= value : other <= value) {
            isBetween = true;
            break;
          }
        }
      }
      if (!isBetween) held[i] = nearest;
    }
  }
  return held;
}
