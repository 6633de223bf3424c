/**
 * What a pixel can be to the network, in the order of its output planes. Soil is what fills the pot and lies on it
 * (gravel, moss, stones too); support is what sticks in it: labels, canes, ties.
 */
export const PIXEL_KINDS = ['background', 'foliage', 'flower', 'pot', 'soil', 'support'] as const;
export type PixelKind = (typeof PIXEL_KINDS)[number];

/**
 * How likely each pixel is of each kind: six planes of `width * height` numbers from 0 to 1, row by row, which
 * sum to 1 at every pixel; and `dressing`, soil and support together.
 */
export interface PixelShares extends Readonly<Record<PixelKind | 'dressing', Float32Array>> {
  readonly width: number;
  readonly height: number;
}

/** Shares from a function that makes one kind's plane. */
export function sharesOf(
  width: number,
  height: number,
  planeOf: (kind: PixelKind, index: number) => Float32Array,
): PixelShares {
  const made = PIXEL_KINDS.map((kind, index) => [kind, planeOf(kind, index)] as const);
  const planes = Object.fromEntries(made) as Record<PixelKind, Float32Array>;
  const dressing = new Float32Array(width * height);
  for (let i = 0; i < dressing.length; i++)
    dressing[i] = (planes.soil[i] as number) + (planes.support[i] as number);
  return { width, height, ...planes, dressing };
}

/** Shares below this are not told apart. */
const LEAST_SHARE = 0.02;

/** Log odds of flower over foliage at a pixel, as the network has it. */
export function flowerOverFoliage({ flower, foliage }: PixelShares, at: number): number {
  return Math.log(((flower[at] as number) + LEAST_SHARE) / ((foliage[at] as number) + LEAST_SHARE));
}
