import type { BalanceFrom } from '../colour/colour-balance.ts';
import type { LabColour } from '../colour/colour-difference.ts';
import { colourfulness, hueDeg } from '../colour/hue.ts';
import type { LeafColours } from './leaf-colours.ts';
import { type GreenLimits, LEAST_COLOUR, SHADES, shadeOf, USUAL_LIMITS } from './leaf-tone.ts';
import { middleOf } from './middle-of.ts';

/**
 * What a plant's leaf looks like in good health, learned from its own first sittings: golden, variegated, zoned and dark leaf
 * are normal for themselves. Plain numbers, so that it can be stored as it is.
 */
export interface NormalLeaf {
  readonly photos: number;
  /** Where the photos' white was known from; other photos are held against it only if theirs is from there too. */
  readonly from: BalanceFrom;
  /** Middle colour of the leaf. */
  readonly leafColour: LabColour;
  /** Share of the leaf in each step of hue, for each of `SHADES` one after the other; what has no colour is in none. */
  readonly hueShares: readonly number[];
}

/** Hue is counted from here in steps; what lies outside counts in the outermost ones. Degrees. */
const HUE = { from: 20, step: 2, steps: 70 };

/** Share of healthy leaf that may lie beyond a limit in each shade, and how far beyond that the limit is set, degrees. */
const BEYOND_SHARE = 0.005;
const MARGIN_DEG = 3;
/** How far a plant of deeper green may raise the limit of yellow above the usual one, degrees. */
const MOST_RAISED_DEG = 4;

/**
 * What the leaf looks like in one photo: the normal of a plant of which only this photo is known.
 *
 * @param from where the photo's white is known from
 * @returns `null` when it is not known, or no leaf was judged
 */
export function leafLook(colours: LeafColours, from: BalanceFrom): NormalLeaf | null {
  if (from === 'none' || colours.l.length === 0) return null;
  return { photos: 1, from, leafColour: middleColour(colours), hueShares: hueSharesOf(colours) };
}

/**
 * Adds the look of a healthy plant in one more photo to what is known of its normal leaf.
 *
 * @param before what was known; `null` when this is the first
 * @returns the mean over the photos, each counting alike; `before` when the photo's white is known from elsewhere
 */
export function learnNormalLeaf(before: NormalLeaf | null, look: NormalLeaf): NormalLeaf {
  if (before === null) return look;
  if (before.from !== look.from) return before;
  const photos = before.photos + look.photos;
  const blend = (old: number, now: number) => old + (look.photos / photos) * (now - old);
  return {
    photos,
    from: before.from,
    leafColour: {
      l: blend(before.leafColour.l, look.leafColour.l),
      a: blend(before.leafColour.a, look.leafColour.a),
      b: blend(before.leafColour.b, look.leafColour.b),
    },
    hueShares: before.hueShares.map((old, k) => blend(old, look.hueShares[k] as number)),
  };
}

/** The median of L*, of a* and of b*. */
export function middleColour({ l, a, b }: LeafColours): LabColour {
  return { l: middleOf(l), a: middleOf(a), b: middleOf(b) };
}

/**
 * Limits for a plant whose normal leaf is known: in each shade just beyond the hue of nearly all of its healthy leaf, and at
 * most a little above the usual limit.
 */
export function limitsOf({ hueShares }: NormalLeaf): GreenLimits {
  return SHADES.map((_, shade) => {
    const most = (USUAL_LIMITS[shade] as number) + MOST_RAISED_DEG;
    let beyond = 0;
    for (let step = 0; step < HUE.steps; step++) {
      beyond += hueShares[shade * HUE.steps + step] as number;
      if (beyond > BEYOND_SHARE) return Math.min(most, HUE.from + step * HUE.step - MARGIN_DEG);
    }
    return most;
  }) as unknown as GreenLimits;
}

function hueSharesOf({ l, a, b, middleL }: LeafColours): number[] {
  const shares = new Array<number>(SHADES.length * HUE.steps).fill(0);
  for (let k = 0; k < l.length; k++) {
    if (colourfulness(l[k] as number, a[k] as number, b[k] as number) < LEAST_COLOUR) continue;
    const hue = hueDeg(a[k] as number, b[k] as number);
    const step = Math.max(0, Math.min(HUE.steps - 1, Math.floor((hue - HUE.from) / HUE.step)));
    const cell = shadeOf(l[k] as number, middleL) * HUE.steps + step;
    shares[cell] = (shares[cell] as number) + 1 / l.length;
  }
  return shares;
}
