import { openOpenCv } from '../opencv/door.ts';
import { shrinkRaster } from '../opencv/pictures.ts';
import { labOfRaster } from '../raster/lab.ts';
import { maskArea, type Raster } from '../raster/raster.ts';
import { backdropDistance, distanceEvidence } from './backdrop-distance.ts';
import { fitBackdrop } from './backdrop-model.ts';
import { findPot } from './find-pot.ts';
import { followBackdrop } from './follow-backdrop.ts';
import type { FoundPlant, NoPlant } from './found-plant.ts';
import { objectMask } from './object-mask.ts';
import { plantColour } from './plant-colour.ts';
import { refineEdge } from './refine-edge.ts';
import { splitPot } from './split-pot.ts';

/** Longer side of the copy on which decisions are made, px. */
const DECISION_SIDE_PX = 640;

export async function findPlant(
  raster: Raster,
  _options: { readonly empty: Raster | null },
): Promise<FoundPlant | NoPlant> {
  const door = await openOpenCv();
  const small = shrinkRaster(door, raster, DECISION_SIDE_PX);
  const picture = labOfRaster(small);
  const backdrop = followBackdrop(door, picture, fitBackdrop(picture));
  const distance = backdropDistance(picture, backdrop.colour);
  const object = distanceEvidence(distance, small, backdrop.spread);
  const byColour = plantColour(picture);
  const mask = objectMask(door, object);
  const { pot, plant } = findPot(door, { raster: small, picture, backdrop, object, mask, plant: byColour });
  const canopy = splitPot(door, mask, plant, pot);
  if (maskArea(canopy) < 50) return { ok: false, reason: 'no-canopy', hint: 'No plant was found.' };
  const scale = raster.width / small.width;
  return {
    ok: true,
    canopy: refineEdge(door, raster, { canopy, object: mask }, backdrop),
    pot:
      pot === null
        ? null
        : {
            rimLeftPx: [(pot.centreX - pot.topHalf) * scale, pot.topY * scale],
            rimRightPx: [(pot.centreX + pot.topHalf) * scale, pot.topY * scale],
          },
    edgeUncertaintyPx: scale,
    notes: [],
  };
}
