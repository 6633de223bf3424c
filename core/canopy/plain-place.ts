import { highestNearby } from '../opencv/pictures.ts';
import { openMask } from '../raster/discs.ts';
import { emptyMask, type Mask, maskArea } from '../raster/raster.ts';
import { backdropDistance, distanceEvidence } from './backdrop-distance.ts';
import type { Backdrop } from './backdrop-model.ts';
import { agreed, both, type Evidence, joinEvidence, MOST_SURE, voiced } from './evidence.ts';
import { findPot } from './find-pot.ts';
import { showsTwoPlants } from './framing.ts';
import type { Heard, Scene } from './gather-evidence.ts';
import type { PixelShares } from './model/pixel-shares.ts';
import { networkOnObject, networkSeesPlant } from './network-voice.ts';
import { objectMask } from './object-mask.ts';
import type { Place } from './place.ts';
import { plantColour } from './plant-colour.ts';
import { plantOdds } from './plant-odds.ts';
import { rimEnds } from './rim-ends.ts';
import { withNeighbours } from './smooth-evidence.ts';
import { splitPot } from './split-pot.ts';
import { allowingPetals } from './white-petals.ts';

/** How far and how strongly neighbours speak where the empty photo may hold the plant's own colours. */
const NEIGHBOURS_PX = 5;
const NEIGHBOURS_MOST = 4;
/** The network may not outshout a backdrop that is known; a photo of the empty stand may hold the plant's own colours. */
const NETWORK_MOST = { backdrop: 1.5, empty: 2.5 };
/** Log odds by colour of canopy that hardly shows, and how wide it must be: gaps between leaves are narrower, or sure. */
const UNSEEN = { odds: -1.5, leastPx: 2 };
/**
 * Where the network sees less than this share of plant and pot within so many px, only sure leaf colours stand: the grain of
 * a wooden table reads up to 2.8.
 */
const VETO = { withinPx: 8, share: 0.3, leafOdds: 3 };

/**
 * Before a backdrop that is known, colour tells best what stands there and where it ends; the network tells what of it
 * is plant, and that a shadow or a table's edge is neither plant nor pot.
 */
export function hearBefore(scene: Scene, place: Place, backdrop: Backdrop): Heard {
  const { door, raster, small, picture, without } = scene;
  const byDistance = distanceEvidence(backdropDistance(picture, backdrop.colour), small, backdrop.spread);
  const byColour = place.fromEmpty
    ? withNeighbours(door, byDistance, NEIGHBOURS_PX, NEIGHBOURS_MOST)
    : byDistance;
  const colour = plantColour(picture);
  const mask = objectMask(door, byColour);
  const shares = networkSeesPlant(scene.shares, maskArea(mask)) ? scene.shares : null;
  const potScene = { raster: small, picture, backdrop, shares, object: byColour, mask, plant: colour };
  const { pot: potShape, plant, roughness } = findPot(door, potScene);
  const leafy = plantOdds({ pot: potShape, plant, roughness, shares }, without);
  const rimClues = { object: byColour, plant, roughness };
  const pot =
    potShape === null ? null : rimEnds(picture, rimClues, potShape, raster.width / small.width, raster);
  const twoPlants = showsTwoPlants(door, mask, colour);
  if (shares === null) {
    const canopy = agreed(both(byColour, leafy), splitPot(door, mask, plant, potShape, roughness));
    return { object: mask, unseen: emptyMask(small.width, small.height), canopy, potShape, pot, twoPlants };
  }
  const seen = allowingPetals(byColour, backdrop.colour, shares);
  const object = vetoed(
    scene,
    shares,
    joinEvidence(
      seen,
      voiced(networkOnObject(shares), 1, place.fromEmpty ? NETWORK_MOST.empty : NETWORK_MOST.backdrop),
    ),
    plant,
  );
  const stands = objectMask(door, object);
  const canopy = masked(stands, (i) => (leafy.logOdds[i] as number) > 0);
  return {
    object: stands,
    unseen: openMask(
      masked(canopy, (i) => isUnseen(seen.logOdds[i] as number)),
      UNSEEN.leastPx,
    ),
    canopy: agreed(both(object, leafy), canopy),
    potShape,
    pot,
    twoPlants,
  };
}

const isUnseen = (odds: number): boolean => odds < 0 && odds > UNSEEN.odds;

/** The network sees plants and pots it could not name the edge of; what lies far from all it sees is a shadow or a line. */
function vetoed({ door, small }: Scene, shares: PixelShares, object: Evidence, plant: Evidence): Evidence {
  const subject = new Float32Array(shares.background.length);
  for (let i = 0; i < subject.length; i++) subject[i] = 1 - (shares.background[i] as number);
  const near = highestNearby(door, subject, small, VETO.withinPx);
  const logOdds = object.logOdds.slice();
  for (let i = 0; i < logOdds.length; i++) {
    const isLeaf = (plant.logOdds[i] as number) > VETO.leafOdds;
    if ((near[i] as number) < VETO.share && !isLeaf) logOdds[i] = -MOST_SURE;
  }
  return { ...object, logOdds };
}

function masked(mask: Mask, keeps: (i: number) => boolean): Mask {
  return { ...mask, data: mask.data.map((inside, i) => (inside === 1 && keeps(i) ? 1 : 0)) };
}
