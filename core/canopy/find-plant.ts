import { type OpenCvDoor, openOpenCv } from '../opencv/door.ts';
import { dilateMask } from '../opencv/masks.ts';
import { resizeMask, shrinkRaster } from '../opencv/pictures.ts';
import { type LabPicture, labOfRaster } from '../raster/lab.ts';
import { type Mask, maskArea, type Raster } from '../raster/raster.ts';
import { backdropDistance, distanceEvidence } from './backdrop-distance.ts';
import type { Backdrop } from './backdrop-model.ts';
import { CUT_SIDE_PX, guessInBusyPlace } from './busy-place.ts';
import { findPot } from './find-pot.ts';
import type { FoundPlant, NoPlant, Pot } from './found-plant.ts';
import { edgeContact, showsTwoPlants } from './framing.ts';
import { NOTES, noPlant } from './hints.ts';
import { mainObject, objectMask } from './object-mask.ts';
import { edgeWidthPx, isTooDark } from './photo-quality.ts';
import { learnPlace, type Place } from './place.ts';
import { plantColour } from './plant-colour.ts';
import { type DrawnEdge, refineEdge } from './refine-edge.ts';
import { rimEnds } from './rim-ends.ts';
import { withNeighbours } from './smooth-evidence.ts';
import { splitPot } from './split-pot.ts';

/** Longer side of the copy on which decisions are made, px. */
const DECISION_SIDE_PX = 640;
/** Least canopy, share of the photo. */
const LEAST_CANOPY_SHARE = 0.0004;
/** How far and how strongly neighbours speak where the empty photo may hold the plant's own colours. */
const NEIGHBOURS_PX = 5;
const NEIGHBOURS_MOST = 4;
/** Doubt of the outline, share of the longer side, that is worth a note. */
const FAINT_EDGE_SHARE = 0.002;
/** Doubt of a GrabCut outline, px of its own copy. */
const BUSY_DOUBT_PX = 2;
/** Width of the sharpest edges, px of the decision copy, above which a photo is unsharp, and too blurred to measure. */
const UNSHARP_PX = 4.2;
const BLURRED_PX = 7;

/**
 * Cuts the plant's canopy and finds the pot's rim.
 *
 * Evidence is gathered on a copy of at most 640 px (place, plant colours), decided together, parted into canopy and
 * pot, and the outline is then drawn anew on the full raster.
 *
 * @param raster the upright photo, at most about 1600 px on its longer side
 * @param options.empty the same stand without a plant, from the same camera place; `null` when there is none
 * @returns the canopy's mask, rim ends and the outline's doubt in px of the raster; or the reason why none is given
 */
export async function findPlant(
  raster: Raster,
  options: { readonly empty: Raster | null },
): Promise<FoundPlant | NoPlant> {
  const door = await openOpenCv();
  const small = shrinkRaster(door, raster, DECISION_SIDE_PX);
  const picture = labOfRaster(small);
  if (isTooDark(picture, null)) return noPlant('too-dark');

  const place = learnPlace(door, raster, picture, options.empty);
  const scene: Scene = { door, raster, small, picture };
  const cut = place.backdrop === null ? cutInBusyPlace(scene) : cutBefore(scene, place, place.backdrop);
  if (maskArea(cut.first) < LEAST_CANOPY_SHARE * cut.first.data.length) return noPlant('no-canopy');
  if (isTooDark(picture, cut.first)) return noPlant('too-dark');
  if (cut.twoPlants) return noPlant('two-plants');
  const edgeWidth = edgeWidthPx(door, picture, dilateMask(door, cut.first, 4));
  if (edgeWidth !== null && edgeWidth > BLURRED_PX) return noPlant('blurred');

  const { canopy, uncertaintyPx } = cut.drawEdge();
  const contact = edgeContact(canopy, cut.pot !== null);
  if (contact.cut) return noPlant('touches-edge');

  const notes = [...place.notes];
  if (cut.pot === null) notes.push(NOTES.noPot);
  if (contact.foot) notes.push(NOTES.footCut);
  if (contact.tip) notes.push(NOTES.tipAtEdge);
  const longerSidePx = Math.max(raster.width, raster.height);
  if (place.backdrop !== null && uncertaintyPx > FAINT_EDGE_SHARE * longerSidePx) notes.push(NOTES.faintEdge);
  if (edgeWidth !== null && edgeWidth > UNSHARP_PX) notes.push(NOTES.unsharp);
  return { ok: true, canopy, pot: cut.pot, edgeUncertaintyPx: uncertaintyPx, notes };
}

interface Scene {
  readonly door: OpenCvDoor;
  readonly raster: Raster;
  /** The decision copy, and the same in L*a*b*. */
  readonly small: Raster;
  readonly picture: LabPicture;
}

/** What one of the two ways of cutting comes to. */
interface Cut {
  /** The canopy as decided on the decision copy. */
  readonly first: Mask;
  /** Rim ends in px of the full raster. */
  readonly pot: Pot | null;
  readonly twoPlants: boolean;
  /** Draws the outline on the full raster; left to the end, as a refused photo needs none. */
  readonly drawEdge: () => DrawnEdge;
}

/** Before a backdrop that is known: everything unlike it stands there, and is parted into canopy and pot. */
function cutBefore({ door, raster, small, picture }: Scene, place: Place, backdrop: Backdrop): Cut {
  const distance = backdropDistance(picture, backdrop.colour);
  const alone = distanceEvidence(distance, small, backdrop.spread);
  const object = place.fromEmpty ? withNeighbours(door, alone, NEIGHBOURS_PX, NEIGHBOURS_MOST) : alone;
  const mask = objectMask(door, object);
  const byColour = plantColour(picture);
  const scene = { raster: small, picture, backdrop, object, mask, plant: byColour };
  const { pot, plant, roughness } = findPot(door, scene);
  const first = splitPot(door, mask, plant, pot, roughness);
  const clues = { object, plant, roughness };
  return {
    first,
    pot: pot === null ? null : rimEnds(picture, clues, pot, raster.width / small.width),
    twoPlants: showsTwoPlants(door, mask, byColour),
    drawEdge: () => refineEdge(door, raster, { canopy: first, object: mask }, { ...place, backdrop }),
  };
}

/**
 * In a busy place the guess is of the plant alone. A pot is not looked for: what would be found is more often wrong
 * than right there, and a wrong scale is worse than none.
 */
function cutInBusyPlace({ door, raster, small, picture }: Scene): Cut {
  const first = mainObject(door, objectMask(door, guessInBusyPlace(door, small, picture)));
  return {
    first,
    pot: null,
    twoPlants: false,
    drawEdge: () => ({
      canopy: resizeMask(door, first, raster),
      uncertaintyPx: (BUSY_DOUBT_PX * Math.max(raster.width, raster.height)) / CUT_SIDE_PX,
    }),
  };
}
