import type { LabPicture } from '../raster/lab.ts';
import { type Evidence, logOddsOf } from './evidence.ts';

/**
 * How much a colour looks like leaf: its length along the direction from neutral to leaf green in the a*b* plane.
 * Leaf, bronze-green and yellow read above 6, soil, wood, terracotta and neutral pots below.
 */
export function leafness(a: number, b: number): number {
  return -0.8 * a + 0.6 * b;
}

/** Chroma from which a colour is taken for a petal when it is no leaf, ΔE units. */
const PETAL_CHROMA = 28;

/**
 * Opinion by colour alone on "leaf or flower rather than pot, soil or wall".
 *
 * Leaf green is told well. A strong red, pink, violet or yellow speaks for a petal, though a terracotta pot shares
 * its hue, so it speaks softly there. White, grey, brown and black say little either way.
 */
export function plantColour(picture: LabPicture): Evidence {
  const logOdds = new Float32Array(picture.l.length);
  for (let i = 0; i < logOdds.length; i++) {
    const a = picture.a[i] as number;
    const b = picture.b[i] as number;
    const leaf = logOddsOf(leafness(a, b), 6, 2.5);
    const chroma = Math.sqrt(a * a + b * b);
    const terracotta = b > 0.6 * a && b < 1.8 * a && a > 0;
    const petal = terracotta ? 0 : Math.min(2, (chroma - PETAL_CHROMA) / 6);
    logOdds[i] = Math.max(leaf, petal, -2);
  }
  return { width: picture.width, height: picture.height, logOdds };
}
