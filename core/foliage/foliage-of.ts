import type { PhotoBalance } from '../colour/balance-photo.ts';
import { colourDifference } from '../colour/colour-difference.ts';
import { NORMAL_95 } from '../measures/plus-minus.ts';
import type { OpenCvDoor } from '../opencv/door.ts';
import type { Foliage, LeafShare, NoFoliage } from './foliage.ts';
import type { LeafColours } from './leaf-colours.ts';
import { type GreenLimits, leafTones, TONES, USUAL_LIMITS } from './leaf-tone.ts';
import { limitsOf, middleColour, type NormalLeaf } from './normal-leaf.ts';
import { NOT_JUDGED } from './not-judged.ts';
import { yellowZones } from './yellow-zones.ts';

/** What leaf is judged by. */
export interface FoliageClues {
  readonly colours: LeafColours;
  readonly photoBalance: PhotoBalance;
  /** The plant's normal leaf; `null` before any was learned. */
  readonly normal: NormalLeaf | null;
}

/** Fewest px of the copy, and share of the leaf, that must be judged. */
const LEAST = { px: 600, share: 0.5 };
/** Without an own normal this share of yellow may as well be the plant's nature. */
const BY_NATURE_SHARE = 0.4;
/**
 * One standard deviation of what differs from photo to photo beside the white: of any share, and as a part of the share itself. Three rendered plants,
 * five photos each in other lights and exposures, spread by half to all of it (`tests/core/foliage/repeat-figures.ts`).
 */
const REPEATED = { share: 0.006, ofShare: 0.03 };
/** One standard deviation of what is wrong alike in all: of a limit's place, degrees; of yellow as a part of itself; and without an own normal. */
const ALIKE = { limitDeg: 2, ofYellow: 0.12, usual: 0.025 };
/**
 * Part of the brown share that is doubted, and that yellow is doubted by: on its thin margins brown blurs into what lies
 * beside it. Measured on rendered plants, where about half of it was read.
 */
const BLURRED = { brown: 0.8, yellow: 0.3 };
/**
 * One standard deviation of yellow petals that pass for yellow leaf, as a part of the yellow petals seen. On renders in yellow bloom up to a fifth did:
 * a rise of bloom is not to be read as a rise of yellow leaf.
 */
const PETALS_AS_LEAF = 0.1;
/** Degrees that an own limit of yellow lies below the usual one from which as much yellow again may look like the plant's own. */
const HIDDEN_DEG = 10;

const OTHER_WHITE =
  'The plant’s normal leaf was learned by another white than this photo’s, so its shares are compared with no other photo’s. Put the stand sheet back where it was, or take it out of every photo.';

/**
 * How much of the leaf is green, yellowing and brown, by its hue in CIE L*a*b* under D65.
 *
 * @param clues the leaf's colours, how they were balanced, and the plant's own normal leaf
 * @returns shares of the leaf that could be judged; their plus-minus holds the doubt of white, how far they may be off that of the
 *   limits and of what is normal too; or why none is given
 *
 * Notes: with an own normal, yellow and brown are what goes beyond it, so golden, zoned and variegated leaf reads green. As
 * seen from the camera: yellow leaf inside the plant does not count. It tells colours, never causes.
 * Reference: own rule with limits stated in `USUAL_LIMITS`; no published one was found for photographs of this kind.
 */
export function foliageOf(
  door: OpenCvDoor,
  { colours, photoBalance, normal }: FoliageClues,
): Foliage | NoFoliage {
  const { balance, why } = photoBalance;
  if (colours.at.length < Math.max(LEAST.px, LEAST.share * colours.leafPx)) {
    return { ok: false, reason: 'too-little', why: NOT_JUDGED.tooLittle };
  }
  const own = normal !== null && normal.from === balance.from ? normal : null;
  const limits = own === null ? USUAL_LIMITS : limitsOf(own);
  const shares = sharesWithDoubt(colours, limits, balance.doubt.tint, own);
  if (own === null && shares.yellow.share > BY_NATURE_SHARE) {
    return { ok: false, reason: 'by-nature', why: NOT_JUDGED.byNature };
  }
  const leafColour = middleColour(colours);
  return {
    ok: true,
    ...shares,
    notCompared: why ?? (normal === null || own !== null ? null : OTHER_WHITE),
    against: own === null ? 'usual' : 'own',
    where: yellowZones(door, colours, leafTones(colours, limits)),
    leafColour,
    departure: own === null ? null : colourDifference(leafColour, own.leafColour),
  };
}

/** Shares, and what each doubt alone would change in them, added as squares. A limit moves all photos of a plant alike, a white one photo. */
export function sharesWithDoubt(
  colours: LeafColours,
  limits: GreenLimits,
  tint: number,
  own: NormalLeaf | null,
): Pick<Foliage, 'green' | 'yellow' | 'brown'> {
  const read = (cast = { a: 0, b: 0 }, shifted = limits) => {
    const seen = sharesOf(leafTones(colours, shifted, cast));
    return { green: 1 - seen.yellow - seen.brown, ...seen };
  };
  const pairs = [
    [read({ a: tint, b: 0 }), read({ a: -tint, b: 0 })],
    [read({ a: 0, b: tint }), read({ a: 0, b: -tint })],
    [read(undefined, moved(limits, ALIKE.limitDeg)), read(undefined, moved(limits, -ALIKE.limitDeg))],
  ] as const;
  const middle = read();
  const belowUsual = (USUAL_LIMITS[1] - limits[1]) / HIDDEN_DEG;
  const byPetals = PETALS_AS_LEAF * (colours.yellowPetalPx / colours.leafPx);
  const hidden = middle.yellow * Math.max(0, Math.min(1, belowUsual));
  const share = (tone: 'green' | 'yellow' | 'brown'): LeafShare => {
    const [byRed, byYellow, byLimits] = pairs.map(([one, other]) => (one[tone] - other[tone]) / 2) as [
      number,
      number,
      number,
    ];
    const turned = tone === 'green' ? middle.yellow + middle.brown : middle[tone];
    const repeated = Math.hypot(
      byRed,
      byYellow,
      REPEATED.share,
      REPEATED.ofShare * turned,
      tone === 'brown' ? 0 : byPetals,
    );
    const alike = Math.hypot(
      byLimits,
      own === null ? ALIKE.usual : 0,
      middle.brown * (tone === 'brown' ? BLURRED.brown : BLURRED.yellow),
      tone === 'brown' ? 0 : Math.hypot(hidden, ALIKE.ofYellow * middle.yellow),
    );
    return {
      share: middle[tone],
      plusMinus: NORMAL_95 * repeated,
      offBy: NORMAL_95 * Math.hypot(repeated, alike),
    };
  };
  return { green: share('green'), yellow: share('yellow'), brown: share('brown') };
}

function sharesOf(tones: Uint8Array): { readonly yellow: number; readonly brown: number } {
  const counts = TONES.map(() => 0);
  for (const tone of tones) counts[tone] = (counts[tone] as number) + 1;
  const of = (tone: 'yellow' | 'brown') => (counts[TONES.indexOf(tone)] as number) / tones.length;
  return { yellow: of('yellow'), brown: of('brown') };
}

function moved([dark, middle, light]: GreenLimits, byDeg: number): GreenLimits {
  return [dark + byDeg, middle + byDeg, light + byDeg];
}
