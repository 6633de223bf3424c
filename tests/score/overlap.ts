import type { Mask } from '../../core/raster/raster.ts';

/** Intersection over union of two masks of one size, 0–1; 0 when both are empty. */
export function intersectionOverUnion(one: Mask, other: Mask): number {
  let [both, either] = [0, 0];
  for (let i = 0; i < one.data.length; i++) {
    both += (one.data[i] as number) & (other.data[i] as number);
    either += (one.data[i] as number) | (other.data[i] as number);
  }
  return either === 0 ? 0 : both / either;
}
