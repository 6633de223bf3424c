import type { LabPicture } from '../raster/lab.ts';
import { type Evidence, MOST_SURE } from './evidence.ts';
import { flowerOverFoliage, type PixelShares } from './model/pixel-shares.ts';
import { leafness } from './plant-colour.ts';
import type { YellowPlaces } from './yellow-petals.ts';

/** Chroma at which a colour that is no leaf's is as likely petal as not, and the step of one log odd. */
const PETAL_CHROMA = 26;
const CHROMA_STEP = 6;
/** Leafness above which a colour is a leaf's, unless it is a light yellow. */
const LEAF = 6;
const YELLOW = { lightness: 62, chroma: 50, mostGreen: -12 };
/** White petals: light, and of less colour than a leaf in the light. */
const WHITE = { lightness: 78, chroma: 14 };
/** What colour may say at most, and with the network to say whether a white or green thing is a petal. */
const COLOUR_MOST = 2.5;
const WHITE_ODDS = 1;
const BESIDE_NETWORK = 0.6;
/** Leafness beyond `LEAF` that counts as one log odd for leaf. */
const GREEN_STEP = 4;

/** The network's opinion, and what it says of places whose colour tells nothing. */
export interface FlowerClues {
  readonly shares: PixelShares;
  readonly yellow: YellowPlaces;
}

/**
 * Log odds that a pixel of the canopy is flower rather than leaf or stem: strong colours that no leaf has, and the
 * network's opinion. Without the network white and green flowers count as leaf, as nothing else tells them from glare, and so
 * do most yellow ones.
 */
export function flowerOdds(picture: LabPicture, clues: FlowerClues | null): Evidence {
  const logOdds = new Float32Array(picture.l.length);
  for (let i = 0; i < logOdds.length; i++) {
    const l = picture.l[i] as number;
    const a = picture.a[i] as number;
    const b = picture.b[i] as number;
    const chroma = Math.sqrt(a * a + b * b);
    let odds = petalOdds(l, a, b, chroma);
    if (clues !== null) {
      const { shares, yellow } = clues;
      const white = l > WHITE.lightness && chroma < WHITE.chroma;
      odds = flowerOverFoliage(shares, i) + (white ? WHITE_ODDS : BESIDE_NETWORK * besideNetwork(a, b, odds));
      const silent = yellow.share[i] as number;
      if (silent > 0) odds = silent * (yellow.logOdds[i] as number) + (1 - silent) * odds;
    }
    logOdds[i] = Math.max(-MOST_SURE, Math.min(MOST_SURE, odds));
  }
  return { width: picture.width, height: picture.height, logOdds };
}

/**
 * What colour adds to the network's opinion. Pale petal in its own shade has little colour, so that little colour says nothing against it;
 * green speaks for leaf only as far as it is green, since leaves shine green on pale petals.
 */
function besideNetwork(a: number, b: number, byColour: number): number {
  if (byColour > 0) return byColour;
  return -Math.max(0, Math.min(COLOUR_MOST, (leafness(a, b) - LEAF) / GREEN_STEP));
}

/** By colour alone: above 0 for strong reds, pinks, violets, blues, oranges and light yellows. */
function petalOdds(l: number, a: number, b: number, chroma: number): number {
  const isYellow = l > YELLOW.lightness && chroma > YELLOW.chroma && a > YELLOW.mostGreen;
  if (leafness(a, b) > LEAF && !isYellow) return -COLOUR_MOST;
  return Math.max(-COLOUR_MOST, Math.min(COLOUR_MOST, (chroma - PETAL_CHROMA) / CHROMA_STEP));
}
