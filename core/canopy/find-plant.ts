import { type OpenCvDoor, openOpenCv } from '../opencv/door.ts';
import { dilateMask } from '../opencv/masks.ts';
import { resizeMask, shrinkRaster } from '../opencv/pictures.ts';
import { type LabPicture, labOfRaster } from '../raster/lab.ts';
import { type Mask, maskArea, type Raster } from '../raster/raster.ts';
import { backdropDistance, distanceEvidence } from './backdrop-distance.ts';
import { guessInBusyPlace } from './busy-place.ts';
import type { Evidence } from './evidence.ts';
import { findPot } from './find-pot.ts';
import type { FoundPlant, NoPlant } from './found-plant.ts';
import { edgeContact, showsTwoPlants } from './framing.ts';
import { NOTES, noPlant } from './hints.ts';
import { mainObject, objectMask } from './object-mask.ts';
import { edgeWidthPx, isTooDark } from './photo-quality.ts';
import { learnPlace, type Place } from './place.ts';
import { plantColour } from './plant-colour.ts';
import { type DrawnEdge, outlineLength, refineEdge } from './refine-edge.ts';
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
  const { mask, object } = standingObject(door, small, picture, place);
  const byColour = plantColour(picture);
  const { pot, plant, roughness } = findPot(door, {
    raster: small,
    picture,
    backdrop: place.backdrop,
    object,
    mask,
    plant: byColour,
  });
  // In a busy place the guess is of the plant alone, so there is no pot to part from it.
  const first = place.backdrop === null ? mask : splitPot(door, mask, plant, pot, roughness);
  if (maskArea(first) < LEAST_CANOPY_SHARE * first.data.length) return noPlant('no-canopy');
  if (isTooDark(picture, first)) return noPlant('too-dark');
  if (place.backdrop !== null && showsTwoPlants(door, mask, byColour)) return noPlant('two-plants');
  const edgeWidth = edgeWidthPx(door, picture, dilateMask(door, first, 4));
  if (edgeWidth !== null && edgeWidth > BLURRED_PX) return noPlant('blurred');

  const drawn = drawEdge(door, raster, { canopy: first, object: mask }, place);
  const contact = edgeContact(drawn.canopy, pot !== null);
  if (contact.cut) return noPlant('touches-edge');

  const notes = [...place.notes];
  if (pot === null) notes.push(NOTES.noPot);
  if (contact.foot) notes.push(NOTES.footCut);
  if (contact.tip) notes.push(NOTES.tipAtEdge);
  if (edgeWidth !== null && edgeWidth > UNSHARP_PX) notes.push(NOTES.unsharp);
  return {
    ok: true,
    canopy: drawn.canopy,
    pot:
      pot === null ? null : rimEnds(picture, { object, plant, roughness }, pot, raster.width / small.width),
    edgeUncertaintyPx: drawn.uncertaintyPx,
    notes,
  };
}

/** What stands before the backdrop: the mask decided on, and the opinion behind it. */
function standingObject(
  door: OpenCvDoor,
  small: Raster,
  picture: LabPicture,
  place: Place,
): { mask: Mask; object: Evidence } {
  if (place.backdrop !== null) {
    const distance = backdropDistance(picture, place.backdrop.colour);
    const alone = distanceEvidence(distance, small, place.backdrop.spread);
    const object = place.fromEmpty ? withNeighbours(door, alone, NEIGHBOURS_PX, NEIGHBOURS_MOST) : alone;
    return { mask: objectMask(door, object), object };
  }
  const { plantHere, unlikeBorder } = guessInBusyPlace(door, small, picture);
  return { mask: mainObject(door, objectMask(door, plantHere)), object: unlikeBorder };
}

function drawEdge(
  door: OpenCvDoor,
  raster: Raster,
  first: { readonly canopy: Mask; readonly object: Mask },
  place: Place,
): DrawnEdge {
  const { backdrop } = place;
  if (backdrop !== null) return refineEdge(door, raster, first, { ...place, backdrop });
  // Without a backdrop to compare with, the coarse outline stands; GrabCut's own doubt is about 2 px of its copy.
  const canopy = resizeMask(door, first.canopy, raster);
  const copyPx = Math.max(raster.width, raster.height) / 320;
  return { canopy, uncertaintyPx: outlineLength(canopy) === 0 ? 0 : 2 * copyPx };
}
