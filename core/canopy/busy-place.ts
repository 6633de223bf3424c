import type { OpenCvDoor } from '../opencv/door.ts';
import { grabCut, resizePlane, shrinkRaster } from '../opencv/pictures.ts';
import { type LabPicture, labOfRaster } from '../raster/lab.ts';
import { emptyMask, type Mask, type Raster } from '../raster/raster.ts';
import { colourContrast } from './colour-contrast.ts';
import { agreed, type Evidence, joinEvidence, voiced } from './evidence.ts';
import type { Heard, Scene } from './gather-evidence.ts';
import { mainObject, objectMask } from './object-mask.ts';
import { plantColour } from './plant-colour.ts';

/** Longer side of the copy that is cut, px. */
export const CUT_SIDE_PX = 320;
/** GrabCut rounds; more change little. */
const ROUNDS = 3;
/** Border strip that teaches the surroundings, share of the shorter side. */
const STRIP_SHARE = 0.05;

/** Shares beyond which the network is taken at its word; between them colour has a say. */
const BAND = { low: 0.2, high: 0.8 };
/** How loud this photo's own colours are beside the network. */
const CONTRAST_WEIGHT = 0.5;
/** What the cut says inside the band. */
const CUT_ODDS = 1.5;

/**
 * In a busy place the network finds plant and pot, and this photo's own colours and edges decide where it wavers.
 * Without the network it is left to leaf colours near the middle; a pot is then not looked for: what would be found is
 * more often wrong than right, and a wrong scale is worse than none.
 */
export function hearInBusyPlace(scene: Scene): Heard {
  const { door, small, picture, shares } = scene;
  if (shares === null) {
    const guess = guessInBusyPlace(door, small, picture);
    const canopy = mainObject(door, objectMask(door, guess));
    return {
      object: canopy,
      unseen: emptyMask(small.width, small.height),
      canopy: agreed(guess, canopy),
      potShape: null,
      pot: null,
      twoPlants: false,
    };
  }
  const chance = shares.foliage.map((share, i) => share + (shares.flower[i] as number));
  const lessons = Uint8Array.from(chance, (share) => (share > 0.9 ? 1 : share < 0.1 ? 2 : 0));
  const contrast = colourContrast(picture, lessons);
  const size = { width: small.width, height: small.height };
  const byNetwork: Evidence = {
    ...size,
    logOdds: chance.map((share) => Math.log((share + 0.01) / (1.01 - share))),
  };
  const canopy = joinEvidence(byNetwork, voiced({ ...size, logOdds: contrast }, CONTRAST_WEIGHT));
  const start = Uint8Array.from(chance, (share, i) =>
    share > BAND.high ? 1 : share < BAND.low ? 0 : (canopy.logOdds[i] as number) > 0 ? 3 : 2,
  );
  if (hasBothSides(start)) {
    const cut = grabCut(door, small, start, 1);
    for (let i = 0; i < cut.length; i++) {
      if (start[i] === 0 || start[i] === 1) continue;
      canopy.logOdds[i] =
        (canopy.logOdds[i] as number) + (cut[i] === 3 || cut[i] === 1 ? CUT_ODDS : -CUT_ODDS);
    }
  }
  const mask = mainObject(door, objectMask(door, canopy));
  const object: Mask = {
    ...mask,
    data: Uint8Array.from(shares.background, (share) => (share < 0.5 ? 1 : 0)),
  };
  return {
    object,
    unseen: emptyMask(small.width, small.height),
    canopy: agreed(canopy, mask),
    potShape: null,
    pot: null,
    twoPlants: false,
  };
}

/**
 * A guess at the plant in a busy place: leaf and flower colours near the middle that the border does not show begin a
 * GrabCut (Rother, Kolmogorov, Blake 2004), which draws the outline. Foliage behind the plant misleads it.
 */
export function guessInBusyPlace(door: OpenCvDoor, raster: Raster, picture: LabPicture): Evidence {
  const small = shrinkRaster(door, raster, CUT_SIDE_PX);
  const smallLab = labOfRaster(small);
  const colour = plantColour(smallLab);
  const leafy = { ...colour, logOdds: colour.logOdds.map((odds) => Math.max(-2, Math.min(2, odds))) };
  const centred = nearMiddle(small);
  const contrast = { ...colour, logOdds: colourContrast(smallLab, lessonsOf(small, leafy, centred)) };
  const joined = joinEvidence(leafy, contrast, centred);
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
