import type { LabPicture } from '../raster/lab.ts';
import { type Evidence, logOddsOf } from './evidence.ts';

/** How a cast shadow is told from a dark thing, in L* and shares. */
export const SHADOW = {
  /** Share of the darkening that still counts inside a shadow's depth. */
  weight: 0.2,
  /** A shadow takes at most this share of the backdrop's L*. */
  depthShare: 0.5,
};

/** ΔE at which a pixel is as likely plant as backdrop, on a backdrop without spread. */
const EVEN_DELTA = 5.5;

/**
 * ΔE of every pixel from the backdrop expected there, with soft cast shadows discounted.
 *
 * A shadow darkens and takes chroma down in proportion to lightness, so a pixel darker than the backdrop is
 * compared with the backdrop's chroma scaled by its own lightness, and darkening up to a shadow's usual depth
 * counts for a fifth. Light grey leaves on a white backdrop therefore read weaker than they are.
 */
export function backdropDistance(picture: LabPicture, expected: LabPicture): Float32Array {
  const distance = new Float32Array(picture.l.length);
  for (let i = 0; i < distance.length; i++) {
    const wantedL = expected.l[i] as number;
    const darker = wantedL - (picture.l[i] as number);
    const scale = darker > 0 && wantedL > 1 ? 1 - darker / wantedL : 1;
    const a = (picture.a[i] as number) - scale * (expected.a[i] as number);
    const b = (picture.b[i] as number) - scale * (expected.b[i] as number);
    let light = Math.abs(darker);
    if (darker > 0) {
      const depth = SHADOW.depthShare * wantedL;
      light = darker < depth ? SHADOW.weight * darker : darker - depth * (1 - SHADOW.weight);
    }
    distance[i] = Math.sqrt(light * light + a * a + b * b);
  }
  return distance;
}

/** The distance as an opinion on "something stands before the backdrop". */
export function distanceEvidence(
  distance: Float32Array,
  size: { readonly width: number; readonly height: number },
  spread: number,
): Evidence {
  const even = evenDistance(spread);
  const logOdds = new Float32Array(distance.length);
  for (let i = 0; i < logOdds.length; i++) logOdds[i] = logOddsOf(distance[i] as number, even, even / 3);
  return { width: size.width, height: size.height, logOdds };
}

/** ΔE at which the decision tips, for a backdrop with this spread. */
export function evenDistance(spread: number): number {
  return Math.max(EVEN_DELTA, 2 + 3.5 * spread);
}
