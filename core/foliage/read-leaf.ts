import type { PartMap } from '../canopy/found-plant.ts';
import { type BalanceClues, balancePhoto } from '../colour/balance-photo.ts';
import type { OpenCvDoor } from '../opencv/door.ts';
import type { Raster } from '../raster/raster.ts';
import type { Foliage, NoFoliage } from './foliage.ts';
import { foliageOf } from './foliage-of.ts';
import { leafColours } from './leaf-colours.ts';
import { leafLook, type NormalLeaf } from './normal-leaf.ts';

/** What leaf in a photo is read by, beside the photo itself. */
export interface LeafClues extends BalanceClues {
  /** The plant's normal leaf; `null` before any was learned. */
  readonly normal: NormalLeaf | null;
  /** Whether petals were told from leaf by more than their colour. */
  readonly petalsTold: boolean;
}

/** What one photo tells of a plant's leaf. */
export interface LeafReading {
  readonly foliage: Foliage | NoFoliage;
  /** To learn the plant's normal leaf from, should it be in good health here; `null` when white is not known. */
  readonly look: NormalLeaf | null;
}

/**
 * Reads the leaf of one photo: balances white and exposure, then tells green, yellow and brown.
 *
 * @param raster the upright raster
 * @param parts what each of its pixels is
 * @returns px of the raster
 */
export function readLeaf(
  door: OpenCvDoor,
  raster: Raster,
  parts: PartMap,
  { normal, petalsTold, ...clues }: LeafClues,
): LeafReading {
  const photoBalance = balancePhoto(raster, parts, clues);
  const { balance } = photoBalance;
  const colours = leafColours(door, raster, parts, { balance, petalsTold });
  return {
    foliage: foliageOf(door, { colours, photoBalance, normal }),
    look: leafLook(colours, balance.from),
  };
}
