import type { LeafColours } from './leaf-colours.ts';

/** What the colour of a place on a leaf says. */
export const TONES = ['green', 'yellow', 'brown'] as const;
export type Tone = (typeof TONES)[number];

/** Leaf in shade, as most of it, and in full light or pale by itself: by lightness beside the photo's middle leaf. */
export const SHADES = ['dark', 'middle', 'light'] as const;

/** Hue (degrees, a* to b*) below which leaf of a shade is no longer green, and below which it is brown rather than yellow. */
export interface ToneLimits {
  readonly yellowDeg: readonly [dark: number, middle: number, light: number];
  readonly brownDeg: readonly [dark: number, middle: number, light: number];
}

/**
 * Limits for a green-leaved plant whose own colours are not known. In CIE L*a*b* leaf green lies at hues about 115–130°, leaf
 * that has lost its green at 90–105°, dead leaf and old wood below 80°: measured on rendered plants, where the three were
 * known.
 */
export const USUAL_LIMITS: ToneLimits = { yellowDeg: [109, 109, 109], brownDeg: [80, 80, 80] };

/** Ratio of (L* + 16) to that of the middle leaf at which shades part. */
const SHADE_EDGES = [0.8, 1.12] as const;
/** Colourfulness below which leaf that is not green is brown rather than yellow, and below which it is glare or grey hair. */
export const LEAST_COLOUR = { yellow: 0.48, brown: 0.14 };

/** Hues below are violet and blue: a petal or a reflection, not dead leaf. Degrees. */
const MOST_VIOLET_DEG = 10;

/** The shade of a place, an index into `SHADES`. */
export function shadeOf(l: number, middleL: number): 0 | 1 | 2 {
  const ratio = (l + 16) / (middleL + 16);
  return ratio < SHADE_EDGES[0] ? 0 : ratio < SHADE_EDGES[1] ? 1 : 2;
}

/** Chroma ÷ (L* + 16): 0 for grey, about 0.5 for leaf green, 0.7 for yellow leaf; the same in any exposure. */
export function colourfulness(l: number, a: number, b: number): number {
  return Math.hypot(a, b) / (l + 16);
}

/** Hue in degrees, -180 to 180. */
export function hueDeg(a: number, b: number): number {
  return (Math.atan2(b, a) * 180) / Math.PI;
}

/**
 * Sorts leaf by its hue.
 *
 * Hue and chroma ÷ (L* + 16) do not change when all light is multiplied, because L*a*b* is made of cube roots: exposure has
 * next to no say, white has all.
 *
 * @param cast shift of a* and b* of a white that the colours are read under, to see what a doubt would change
 * @returns an index into `TONES` for each colour
 */
export function leafTones(
  colours: LeafColours,
  limits: ToneLimits,
  cast: { readonly a: number; readonly b: number } = { a: 0, b: 0 },
): Uint8Array {
  const middleL = middleOf(colours.l);
  return Uint8Array.from(colours.l, (l, k) => {
    // A cast shifts a* and b* in proportion to L* + 16.
    const share = (l + 16) / 116;
    const [a, b] = [(colours.a[k] as number) + cast.a * share, (colours.b[k] as number) + cast.b * share];
    const shade = shadeOf(l, middleL);
    const hue = hueDeg(a, b);
    const colour = colourfulness(l, a, b);
    if (hue >= limits.yellowDeg[shade] || hue < MOST_VIOLET_DEG || colour < LEAST_COLOUR.brown) return 0;
    return hue < limits.brownDeg[shade] || colour < LEAST_COLOUR.yellow ? 2 : 1;
  });
}

/** The median. */
export function middleOf(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  return sorted.length === 0 ? Number.NaN : (sorted[sorted.length >> 1] as number);
}
