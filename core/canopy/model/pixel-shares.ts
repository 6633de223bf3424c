/** What a pixel can be to the network, in the order of its output planes. Dressing is soil, label and support. */
export const PIXEL_KINDS = ['background', 'foliage', 'flower', 'pot', 'dressing'] as const;
export type PixelKind = (typeof PIXEL_KINDS)[number];

/**
 * How likely each pixel is of each kind: five planes of `width * height` numbers from 0 to 1, row by row, which
 * sum to 1 at every pixel.
 */
export interface PixelShares extends Readonly<Record<PixelKind, Float32Array>> {
  readonly width: number;
  readonly height: number;
}

/** Shares from a function that makes one kind's plane. */
export function sharesOf(
  width: number,
  height: number,
  planeOf: (kind: PixelKind, index: number) => Float32Array,
): PixelShares {
  const planes = PIXEL_KINDS.map((kind, index) => [kind, planeOf(kind, index)] as const);
  return { width, height, ...(Object.fromEntries(planes) as Record<PixelKind, Float32Array>) };
}
