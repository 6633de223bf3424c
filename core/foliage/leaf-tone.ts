import { colourfulness, hueDeg } from '../colour/hue.ts';
import type { LeafColours } from './leaf-colours.ts';

/** What the colour of a place on a leaf says. */
export const TONES = ['green', 'yellow', 'brown'] as const;
export type Tone = (typeof TONES)[number];

/** Leaf in shade, as most of it, and in full light or pale by itself: by lightness beside the photo's middle leaf. */
export const SHADES = ['dark', 'middle', 'light'] as const;

/** Hue, degrees from a* to b*, below which leaf of each shade is no longer green. */
export type GreenLimits = readonly [dark: number, middle: number, light: number];

/**
 * Limits for a green-leaved plant whose own colours are not known. In CIE L*a*b* leaf green lies at hues about 115–130°, leaf
 * that has lost its green at 90–105°: measured on rendered plants, where both were known.
 */
export const USUAL_LIMITS: GreenLimits = [109, 109, 109];

/** Ratio of (L* + 16) to that of the middle leaf at which shades part. */
const SHADE_EDGES = [0.8, 1.12] as const;
/** Colourfulness below which a place is glare or grey hair and has no say. */
export const LEAST_COLOUR = 0.14;
/** Leaf that is not green is brown up to this colourfulness, and to more the redder it is; beyond it is yellow. */
const BROWN = { colour: 0.45, redderThanDeg: 96, perDeg: 0.022 };
const [GREEN, YELLOW, DEAD] = TONES.map((_, index) => index) as [number, number, number];

/** Hues below are violet and blue: a petal or a reflection, not dead leaf. Degrees. */
const MOST_VIOLET_DEG = 10;

/** The shade of a place, an index into `SHADES`. */
export function shadeOf(l: number, middleL: number): 0 | 1 | 2 {
  const ratio = (l + 16) / (middleL + 16);
  return ratio < SHADE_EDGES[0] ? 0 : ratio < SHADE_EDGES[1] ? 1 : 2;
}

/**
 * Sorts leaf: green from the rest by hue, yellow from brown by colourfulness and hue.
 *
 * Hue and chroma ÷ (L* + 16) do not change when all light is multiplied, because L*a*b* is made of cube roots: exposure has
 * next to no say, white has all.
 *
 * @param cast shift of a* and b* of a white that the colours are read under, to see what a doubt would change
 * @returns an index into `TONES` for each colour
 */
export function leafTones(
  colours: LeafColours,
  limits: GreenLimits,
  cast: { readonly a: number; readonly b: number } = { a: 0, b: 0 },
): Uint8Array {
  const { middleL, l: lights } = colours;
  const tones = new Uint8Array(lights.length).fill(GREEN);
  const isTurned = limits.map(isBelow);
  for (let k = 0; k < lights.length; k++) {
    const l = lights[k] as number;
    // A cast shifts a* and b* in proportion to L* + 16.
    const share = (l + 16) / 116;
    const a = (colours.a[k] as number) + cast.a * share;
    const b = (colours.b[k] as number) + cast.b * share;
    if (!isTurned[shadeOf(l, middleL)]?.(a, b)) continue;
    const hue = hueDeg(a, b);
    const colour = colourfulness(l, a, b);
    if (hue < MOST_VIOLET_DEG || colour < LEAST_COLOUR) continue;
    tones[k] = colour < BROWN.colour + BROWN.perDeg * Math.max(0, BROWN.redderThanDeg - hue) ? DEAD : YELLOW;
  }
  return tones;
}

/** Whether a hue lies below a limit, by which side of a line it is on: most leaf is green, and its hue need not be reckoned. */
function isBelow(limitDeg: number): (a: number, b: number) => boolean {
  const [along, up] = [Math.cos((limitDeg * Math.PI) / 180), Math.sin((limitDeg * Math.PI) / 180)];
  // Violet and blue lie on the same side as what has turned; they are told apart once the hue is known.
  return (a, b) => a * up - b * along > 0;
}
