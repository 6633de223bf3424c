import type { Mask } from './raster.ts';

/** The mask of all pixels whose label is marked 1 in `keeps`. */
export function maskOfLabels(
  labels: Int32Array,
  keeps: Uint8Array,
  { width, height }: { readonly width: number; readonly height: number },
): Mask {
  const data = new Uint8Array(labels.length);
  for (let i = 0; i < data.length; i++) data[i] = keeps[labels[i] as number] as number;
  return { width, height, data };
}
