import { grabCut, resizePlane, shrinkRaster } from '../opencv/pictures.ts';
import { labOfRaster } from '../raster/lab.ts';
import { emptyMask, type Mask, type Raster } from '../raster/raster.ts';
import { colourContrast } from './colour-contrast.ts';
import { agreed, both, type Evidence, joinEvidence, voiced } from './evidence.ts';
import { findPot } from './find-pot.ts';
import type { Heard, Scene } from './gather-evidence.ts';
import type { PixelShares } from './model/pixel-shares.ts';
import { networkOnObject, networkOnPlant } from './network-voice.ts';
import { mainObject, objectMask } from './object-mask.ts';
import { plantColour } from './plant-colour.ts';
import { plantOdds } from './plant-odds.ts';
import { rimEnds, rimOnCopy } from './rim-ends.ts';

/** Longer side of the copy that is cut, px. */
export const CUT_SIDE_PX = 320;
/** GrabCut rounds; more change little. */
const ROUNDS = 3;
/** Border strip that teaches the surroundings, share of the shorter side. */
const STRIP_SHARE = 0.05;

/** Log odds beyond which the voices are taken at their word; between them GrabCut has a say. */
const BAND_ODDS = 1.6;
/** Log odds from which a pixel teaches this photo's own colours. */
const LESSON_ODDS = 2.2;
/** How loud this photo's own colours are beside the network. */
const CONTRAST_WEIGHT = 0.5;
/** What the cut says inside the band. */
const CUT_ODDS = 1.5;

/** Where this very plant is known, how loud are the network, which cannot tell it from other plants, ... */
const NETWORK_MOST = 2;
/** ... and colours that leaves have in general. */
const GENERAL_WEIGHT = 0.5;

/**
 * In a busy place the network finds plant and pot, and this photo's own colours and edges decide where it wavers. But
 * where other plants stand about, what is known of this very one tells it best, and the network is a voice among others.
 * With neither, it is left to leaf colours near the middle; a pot is then not looked for: what would be found is
 * more often wrong than right, and a wrong scale is worse than none.
 */
export function hearInBusyPlace(scene: Scene): Heard {
  const { door, raster, small, picture, shares, without, withOwn } = scene;
  const unseen = emptyMask(small.width, small.height);
  if (shares === null) {
    const guess = guessInBusyPlace(scene);
    const object = mainObject(door, objectMask(door, guess));
    const canopy = agreed(withOwn === null ? guess : withOwn(guess, null), object);
    return { object, unseen, canopy, potShape: null, pot: null, twoPlants: false };
  }
  const byNetwork = networkOnObject(shares);
  const object = plantAndPot(shares);
  const colour = plantColour(picture);
  const potScene = {
    raster: small,
    picture,
    backdrop: null,
    shares,
    object: byNetwork,
    mask: object,
    plant: colour,
  };
  const { pot: potShape, plant, roughness } = findPot(door, potScene);
  const rimClues = { object: byNetwork, plant, roughness };
  const pot =
    potShape === null ? null : rimEnds(picture, rimClues, potShape, raster.width / small.width, raster);
  if (withOwn !== null) {
    const guess = guessInBusyPlace(scene);
    const rim = pot === null ? null : rimOnCopy(pot, small.width / raster.width);
    const canopy = agreed(withOwn(guess, rim), mainObject(door, objectMask(door, guess)));
    return { object, unseen, canopy, potShape, pot, twoPlants: false };
  }
  const leafy = both(byNetwork, plantOdds({ pot: potShape, plant, roughness, shares }, without));
  const canopy = cutInBand(scene, joinEvidence(leafy, ownColours(scene, leafy)));
  const decided = agreed(canopy, mainObject(door, objectMask(door, canopy)));
  return { object, unseen, canopy: decided, potShape, pot, twoPlants: false };
}

/** What this photo's own colours say: met more often where the voices are sure of canopy, or where sure of none. */
function ownColours({ picture }: Scene, canopy: Evidence): Evidence {
  const lessons = new Uint8Array(canopy.logOdds.length);
  for (let i = 0; i < lessons.length; i++) {
    const odds = canopy.logOdds[i] as number;
    lessons[i] = odds > LESSON_ODDS ? 1 : odds < -LESSON_ODDS ? 2 : 0;
  }
  return voiced({ ...canopy, logOdds: colourContrast(picture, lessons) }, CONTRAST_WEIGHT);
}

/** GrabCut decides where the voices waver. */
function cutInBand({ door, small }: Scene, canopy: Evidence): Evidence {
  const start = new Uint8Array(canopy.logOdds.length);
  for (let i = 0; i < start.length; i++) {
    const odds = canopy.logOdds[i] as number;
    start[i] = odds > BAND_ODDS ? 1 : odds < -BAND_ODDS ? 0 : odds > 0 ? 3 : 2;
  }
  if (!hasBothSides(start)) return canopy;
  const cut = grabCut(door, small, start, 1);
  const logOdds = canopy.logOdds.slice();
  for (let i = 0; i < logOdds.length; i++) {
    if (start[i] === 0 || start[i] === 1) continue;
    logOdds[i] = (logOdds[i] as number) + (cut[i] === 3 || cut[i] === 1 ? CUT_ODDS : -CUT_ODDS);
  }
  return { ...canopy, logOdds };
}

function plantAndPot({ width, height, background }: PixelShares): Mask {
  const data = new Uint8Array(background.length);
  for (let i = 0; i < data.length; i++) data[i] = (background[i] as number) < 0.5 ? 1 : 0;
  return { width, height, data };
}

/**
 * A guess at the plant in a busy place: leaf and flower colours near the middle that the border does not show, and what
 * is known of the plant, begin a GrabCut (Rother, Kolmogorov, Blake 2004), which draws the outline. Foliage behind the
 * plant misleads it, unless the plant is known.
 */
export function guessInBusyPlace({
  door,
  small: raster,
  picture,
  shares,
  withOwn,
}: Pick<Scene, 'door' | 'small' | 'picture' | 'shares' | 'withOwn'>): Evidence {
  const small = shrinkRaster(door, raster, CUT_SIDE_PX);
  const smallLab = labOfRaster(small);
  const resized = (
    evidence: Evidence,
    to: { readonly width: number; readonly height: number },
  ): Evidence => ({
    width: to.width,
    height: to.height,
    logOdds: resizePlane(door, evidence.logOdds, evidence, to),
  });
  const colour = voiced(plantColour(smallLab), 1, 2);
  const byNetwork = shares === null ? null : resized(networkOnPlants(shares), small);
  const leafy = byNetwork === null ? colour : joinEvidence(colour, byNetwork);
  const centred = nearMiddle(small);
  const contrast = { ...colour, logOdds: colourContrast(smallLab, lessonsOf(small, leafy, centred)) };
  const general = joinEvidence(leafy, contrast);
  const joined =
    withOwn === null
      ? joinEvidence(general, centred)
      : resized(
          withOwn(resized(joinEvidence(voiced(general, GENERAL_WEIGHT), centred), picture), null),
          small,
        );
  const start = joined.logOdds.map((odds, i) => {
    if (onBorder(small, i, 0.015) && odds < 2) return 0;
    return odds > 3.2 ? 1 : odds < -3 ? 0 : odds > 0.5 ? 3 : 2;
  });
  const cut = hasBothSides(start)
    ? grabCut(door, small, Uint8Array.from(start), ROUNDS)
    : Uint8Array.from(start);
  const decided = Float32Array.from(cut, (value) => (value === 1 || value === 3 ? 3 : -3));
  return {
    width: picture.width,
    height: picture.height,
    logOdds: resizePlane(door, decided, small, picture),
  };
}

/** The network on any plant, this one or another. */
function networkOnPlants(shares: PixelShares): Evidence {
  return voiced(both(networkOnObject(shares), networkOnPlant(shares)), 1, NETWORK_MOST);
}

/** The middle teaches 1 where it looks like a plant, the border 2. */
function lessonsOf(size: Raster, leafy: Evidence, centred: Evidence): Uint8Array {
  return Uint8Array.from(leafy.logOdds, (odds, i) => {
    if (onBorder(size, i, STRIP_SHARE)) return 2;
    return odds > 0.5 && (centred.logOdds[i] as number) > 0.5 ? 1 : 0;
  });
}

/** 1.5 in the middle, 0 at six tenths of the way to the edge, -2.5 at the middle of an edge. */
function nearMiddle({ width, height }: Raster): Evidence {
  const logOdds = new Float32Array(width * height);
  for (let i = 0; i < logOdds.length; i++) {
    const x = (2 * (i % width)) / width - 1;
    const y = (2 * Math.floor(i / width)) / height - 1;
    logOdds[i] = 1.5 - 4 * (x * x + y * y);
  }
  return { width, height, logOdds };
}

function onBorder({ width, height }: Raster, i: number, share: number): boolean {
  const strip = Math.max(1, Math.round(share * Math.min(width, height)));
  const [x, y] = [i % width, Math.floor(i / width)];
  return x < strip || y < strip || x >= width - strip || y >= height - strip;
}

function hasBothSides(start: Float32Array | Uint8Array): boolean {
  return (
    start.some((value) => value === 1 || value === 3) && start.some((value) => value === 0 || value === 2)
  );
}
