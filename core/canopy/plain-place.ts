import { highestNearby } from '../opencv/pictures.ts';
import { emptyMask, type Mask } from '../raster/raster.ts';
import { backdropDistance, distanceEvidence } from './backdrop-distance.ts';
import type { Backdrop } from './backdrop-model.ts';
import { agreed, both, type Evidence, joinEvidence, MOST_SURE, voiced } from './evidence.ts';
import { findPot } from './find-pot.ts';
import { showsTwoPlants } from './framing.ts';
import type { Heard, Scene } from './gather-evidence.ts';
import type { PixelShares } from './model/pixel-shares.ts';
import { networkOnObject, networkOnPlant } from './network-voice.ts';
import { objectMask } from './object-mask.ts';
import type { Place } from './place.ts';
import { plantColour } from './plant-colour.ts';
import { rimEnds } from './rim-ends.ts';
import { withNeighbours } from './smooth-evidence.ts';
import { splitPot } from './split-pot.ts';

/** How far and how strongly neighbours speak where the empty photo may hold the plant's own colours. */
const NEIGHBOURS_PX = 5;
const NEIGHBOURS_MOST = 4;

/**
 * Before a backdrop that is known, colour tells best what stands there and where it ends; the network tells what of it
 * is plant, and that a shadow or a table's edge is neither plant nor pot.
 */
export function hearBefore(scene: Scene, place: Place, backdrop: Backdrop): Heard {
  const { door, raster, small, picture, shares } = scene;
  const byDistance = distanceEvidence(backdropDistance(picture, backdrop.colour), small, backdrop.spread);
  const alone = place.fromEmpty
    ? withNeighbours(door, byDistance, NEIGHBOURS_PX, NEIGHBOURS_MOST)
    : byDistance;
  const colour = plantColour(picture);
  const byColour = objectMask(door, alone);
  const potScene = { raster: small, picture, backdrop, object: alone, mask: byColour, plant: colour };
  const { pot, plant, roughness } = findPot(door, potScene);
  const rim = () =>
    pot === null
      ? null
      : rimEnds(picture, { object: alone, plant, roughness }, pot, raster.width / small.width);
  if (shares === null) {
    const canopy = splitPot(door, byColour, plant, pot, roughness);
    return {
      object: byColour,
      unseen: emptyMask(small.width, small.height),
      canopy: agreed(both(alone, plant), canopy),
      potShape: pot,
      pot: rim(),
      twoPlants: showsTwoPlants(door, byColour, colour),
    };
  }
  const object = vetoed(
    scene,
    joinEvidence(alone, voiced(networkOnObject(shares), 1, NETWORK_MOST)),
    shares,
    plant,
  );
  const stands = objectMask(door, object);
  const leafy = joinEvidence(voiced(plant, 0.5, 1.5), networkOnPlant(shares));
  const canopy: Mask = {
    ...stands,
    data: stands.data.map((inside, i) => (inside === 1 && (leafy.logOdds[i] as number) > 0 ? 1 : 0)),
  };
  return {
    object: stands,
    unseen: {
      ...canopy,
      data: canopy.data.map((inside, i) => (inside === 1 && (alone.logOdds[i] as number) < 0 ? 1 : 0)),
    },
    canopy: agreed(both(object, leafy), canopy),
    potShape: pot,
    pot: rim(),
    twoPlants: showsTwoPlants(door, byColour, colour),
  };
}

/** The network may not outshout a backdrop that is known. */
const NETWORK_MOST = 2;
/** Where the network sees less than this share of plant and pot within so many px, only leaf colours stand. */
const VETO = { withinPx: 8, share: 0.3, leafOdds: 1 };

function vetoed({ door, small }: Scene, object: Evidence, shares: PixelShares, plant: Evidence): Evidence {
  const subject = shares.background.map((share) => 1 - share);
  const near = highestNearby(door, subject, small, VETO.withinPx);
  const logOdds = object.logOdds.map((odds, i) => {
    const isLeaf = (plant.logOdds[i] as number) > VETO.leafOdds;
    return (near[i] as number) < VETO.share && !isLeaf ? -MOST_SURE : odds;
  });
  return { ...object, logOdds };
}
