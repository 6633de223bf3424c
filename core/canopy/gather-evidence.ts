import { type OpenCvDoor, openOpenCv } from '../opencv/door.ts';
import { shrinkRaster } from '../opencv/pictures.ts';
import { type LabPicture, labOfRaster } from '../raster/lab.ts';
import type { Mask, Raster } from '../raster/raster.ts';
import { hearInBusyPlace } from './busy-place.ts';
import type { Evidence } from './evidence.ts';
import type { EvidenceSource } from './evidence-sources.ts';
import type { NoPlant, Pot } from './found-plant.ts';
import { noPlant } from './hints.ts';
import type { KnownOfPlant } from './known.ts';
import { firstGuess } from './model/first-guess.ts';
import type { PixelShares } from './model/pixel-shares.ts';
import { type OwnVoices, ownVoices } from './own-voices.ts';
import { isTooDark } from './photo-quality.ts';
import { learnPlace, type Place } from './place.ts';
import { hearBefore } from './plain-place.ts';
import type { PotShape } from './pot-shape.ts';
import { rimOnCopy } from './rim-ends.ts';

/** Longer side of the copy on which decisions are made, px. */
export const DECISION_SIDE_PX = 640;

/** What the voices say together on one photo, before anyone draws on it; costly to make, the same for every stroke. */
export interface Gathered {
  readonly ok: true;
  readonly door: OpenCvDoor;
  readonly raster: Raster;
  /** The decision copy and the same in L*a*b*; everything below is of its size. */
  readonly small: Raster;
  readonly picture: LabPicture;
  readonly place: Place;
  /** Everything that stands before the backdrop; in a busy place what the network takes for plant and pot. */
  readonly object: Mask;
  /** Canopy that differs too little from the backdrop to be seen by its colour. */
  readonly unseen: Mask;
  /** Canopy or not. */
  readonly canopy: Evidence;
  readonly potShape: PotShape | null;
  /** Rim in px of the raster. */
  readonly pot: Pot | null;
  readonly shares: PixelShares | null;
  /** Whether a second plant of much the same size stands beside. */
  readonly twoPlants: boolean;
}

/** What is heard in one of the two kinds of place. */
export type Heard = Pick<Gathered, 'object' | 'unseen' | 'canopy' | 'potShape' | 'pot' | 'twoPlants'>;

/** What the voices look at. */
export interface Scene {
  readonly door: OpenCvDoor;
  readonly raster: Raster;
  readonly small: Raster;
  readonly picture: LabPicture;
  readonly shares: PixelShares | null;
  readonly without: ReadonlySet<EvidenceSource>;
  /** What is known of this very plant; `null` when nothing is. */
  readonly withOwn: OwnVoices | null;
}

const NOBODY: ReadonlySet<EvidenceSource> = new Set();

/**
 * Hears every voice on one photo.
 *
 * @param raster the upright photo, at most about 1600 px on its longer side
 * @param known what is known beside the photo
 * @returns the joined evidence, or why the photo cannot be measured
 */
export async function gatherEvidence(raster: Raster, known: KnownOfPlant): Promise<Gathered | NoPlant> {
  const door = await openOpenCv();
  const small = shrinkRaster(door, raster, DECISION_SIDE_PX);
  const hears = known.network !== null && !known.without?.has('network');
  const shares = hears ? await firstGuess(small, known.network) : null;
  return gatherFrom({ door, raster, small, shares }, known);
}

/** The same from the network's answer on the decision copy. */
export function gatherFrom(
  looks: Pick<Scene, 'door' | 'raster' | 'small' | 'shares'>,
  known: KnownOfPlant,
): Gathered | NoPlant {
  const { door, raster, small } = looks;
  const picture = labOfRaster(small);
  if (isTooDark(picture, null)) return noPlant('too-dark');
  const without = known.without ?? NOBODY;
  const empty = without.has('empty-photo') ? null : known.empty;
  const place = learnPlace(door, raster, picture, empty, !without.has('backdrop'));
  const withOwn = ownVoices(door, picture, known, without);
  const scene: Scene = { ...looks, picture, without, withOwn };
  const heard = place.backdrop === null ? hearInBusyPlace(scene) : hearBefore(scene, place, place.backdrop);
  const { object, unseen, potShape, pot, twoPlants } = heard;
  // In a busy place they were heard before the cut.
  const rim = pot === null ? null : rimOnCopy(pot, small.width / raster.width);
  const canopy = withOwn === null || place.backdrop === null ? heard.canopy : withOwn(heard.canopy, rim);
  return { ok: true, ...looks, picture, place, object, unseen, canopy, potShape, pot, twoPlants };
}
