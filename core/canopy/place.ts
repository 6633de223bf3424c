import type { OpenCvDoor } from '../opencv/door.ts';
import { shrinkRaster } from '../opencv/pictures.ts';
import { type LabPicture, labOfRaster } from '../raster/lab.ts';
import type { Raster } from '../raster/raster.ts';
import { valueOfRank } from '../raster/value-of-rank.ts';
import { type Backdrop, deltaAt, fitBackdrop, stretchBackdrop } from './backdrop-model.ts';
import { fitEmptyPhoto } from './empty-backdrop.ts';
import { followBackdrop } from './follow-backdrop.ts';
import { NOTES } from './hints.ts';
import { nearestWithin } from './nearest-colour.ts';
import { followSides } from './side-profile.ts';
import { cropRaster, type Window } from './window.ts';

/** What is known of the place behind the plant. */
export interface Place {
  /** The backdrop at the decision size; `null` in a busy place without a photo of the empty stand. */
  readonly backdrop: Backdrop | null;
  /** The backdrop in a window of the full raster. */
  readonly expectedIn: (window: Window, seen: LabPicture) => LabPicture;
  /** Whether the backdrop is a photo of the empty stand: it may then hold the plant's own colours. */
  readonly fromEmpty: boolean;
  readonly notes: readonly string[];
}

/** Share of the border that a smooth surface must explain for the backdrop to count as plain. */
const PLAIN_SHARE = 0.78;
/** ΔE up to which a px of the empty photo fits this one, and the share of them that must. */
const FITTING_DELTA = 8;
const FITTING_SHARE = 0.35;

/** Learns the place from the photo of the empty stand if it fits, else from the photo's own border. */
export function learnPlace(
  door: OpenCvDoor,
  raster: Raster,
  picture: LabPicture,
  empty: Raster | null,
  hearsBorder = true,
): Place {
  const fitted = empty === null ? null : placeFromEmpty(door, raster, picture, empty);
  if (fitted !== null) return fitted;
  const notes: string[] = empty === null ? [] : [NOTES.emptyMoved];
  const sided = followSides(picture, fitBackdrop(picture));
  if (sided.plainShare < PLAIN_SHARE || !hearsBorder) {
    return {
      backdrop: null,
      expectedIn: (_, seen) => seen,
      fromEmpty: false,
      notes: [...notes, NOTES.busyPlace],
    };
  }
  const backdrop = followBackdrop(door, picture, sided);
  return {
    backdrop,
    expectedIn: (window) => stretchBackdrop(backdrop.colour, raster, window),
    fromEmpty: false,
    notes,
  };
}

function placeFromEmpty(door: OpenCvDoor, raster: Raster, picture: LabPicture, empty: Raster): Place | null {
  const laid = fitEmptyPhoto(door, raster, empty);
  if (laid === null) return null;
  const small = labOfRaster(shrinkRaster(door, laid, Math.max(picture.width, picture.height)));
  const near = nearestWithin(picture, small, 1);
  const deltas = new Float32Array(near.l.length);
  let fitting = 0;
  for (let i = 0; i < deltas.length; i++) {
    deltas[i] = deltaAt(picture, near, i);
    if ((deltas[i] as number) <= FITTING_DELTA) fitting++;
  }
  const plainShare = fitting / deltas.length;
  if (plainShare < FITTING_SHARE) return null;
  const spread = valueOfRank(deltas, Math.floor(0.5 * plainShare * deltas.length)) as number;
  const backdrop = followBackdrop(door, picture, { colour: near, spread, plainShare });
  const reach = Math.max(1, Math.round(Math.max(raster.width, raster.height) / 800));
  return {
    backdrop,
    expectedIn: (window, seen) => nearestWithin(seen, labOfRaster(cropRaster(laid, window)), reach),
    fromEmpty: true,
    notes: [],
  };
}
