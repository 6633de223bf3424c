import type { OpenCvDoor } from '../opencv/door.ts';
import { meanPlane, resizePlane } from '../opencv/pictures.ts';
import type { Mask } from '../raster/raster.ts';
import { flowerOdds } from './flower-odds.ts';
import { PARTS, type Part, type PartMap } from './found-plant.ts';
import type { Gathered } from './gather-evidence.ts';
import { type PotShape, potZone } from './pot-shape.ts';
import { yellowPlaces } from './yellow-petals.ts';

/** What the parts are told by, all but the raster of the decision's size. */
export type PartClues = Pick<Gathered, 'raster' | 'picture' | 'object' | 'potShape' | 'shares'>;

/** Petals are wider than this; a single px of strong colour is a leaf's edge. Px of the decision copy. */
const PETAL_REACH_PX = 1;
/** What a place beside the pot's own adds to a share: soil lies in the opening, the body is pot. */
const PLACE_WORTH = 0.25;
/** Without the network, things this many half-widths from the pot's middle are not part of it. */
const FOOT_REACH = 1.5;

const INDEX = Object.fromEntries(PARTS.map((part, index) => [part, index])) as Record<Part, number>;

/**
 * What every pixel of the raster is.
 *
 * The canopy is as decided; within it petals are told from leaves. What else stands there is pot, soil or support, by
 * the network's shares and the pot's shape, or by the shape alone. Decided on the decision copy and enlarged.
 *
 * @param canopy the canopy, of the raster's size
 */
export function partMap(door: OpenCvDoor, clues: PartClues, canopy: Mask): PartMap {
  const { raster, picture, shares } = clues;
  const byNetwork = shares && { shares, yellow: yellowPlaces(door, picture, shares) };
  const flower = meanPlane(door, flowerOdds(picture, byNetwork).logOdds, picture, PETAL_REACH_PX);
  const { kinds, stands } = standingParts(clues);
  const fineFlower = resizePlane(door, flower, picture, raster);
  const fineStands = resizePlane(door, stands, picture, raster);
  const data = new Uint8Array(raster.width * raster.height);
  const columns = nearestPlaces(raster.width, picture.width);
  const rows = nearestPlaces(raster.height, picture.height);
  for (let y = 0, i = 0; y < raster.height; y++) {
    const at = (rows[y] as number) * picture.width;
    for (let x = 0; x < raster.width; x++, i++) {
      if (canopy.data[i] === 1) data[i] = (fineFlower[i] as number) > 0 ? INDEX.flower : INDEX.leaf;
      else if ((fineStands[i] as number) > 0) data[i] = kinds[at + (columns[x] as number)] as number;
    }
  }
  return { width: raster.width, height: raster.height, data };
}

/** Were a pixel not canopy: which of pot, soil and support it would be, and above 0 where it is one of them at all. */
function standingParts({ picture, object, potShape, shares }: PartClues): {
  kinds: Uint8Array;
  stands: Float32Array;
} {
  const kinds = new Uint8Array(object.data.length);
  const stands = new Float32Array(object.data.length);
  for (let y = 0, i = 0; y < picture.height; y++) {
    for (let x = 0; x < picture.width; x++, i++) {
      const zone = potShape === null ? null : potZone(potShape, x + 0.5, y + 0.5);
      if (shares === null) {
        const part = partByPlace(zone, potShape, x);
        kinds[i] = INDEX[part];
        stands[i] = object.data[i] === 1 && part !== 'background' ? 0.5 : -0.5;
        continue;
      }
      const pot = (shares.pot[i] as number) + (zone === 'body' ? PLACE_WORTH : 0);
      const soil = (shares.soil[i] as number) + (zone === 'opening' ? PLACE_WORTH : 0);
      const support = shares.support[i] as number;
      kinds[i] = support > pot && support > soil ? INDEX.support : soil > pot ? INDEX.soil : INDEX.pot;
      stands[i] =
        (shares.pot[i] as number) + (shares.soil[i] as number) + support - (shares.background[i] as number);
    }
  }
  return { kinds, stands };
}

/** By the pot's shape alone. */
function partByPlace(zone: ReturnType<typeof potZone> | null, pot: PotShape | null, x: number): Part {
  if (zone === null || pot === null || zone === 'body') return 'pot';
  if (zone === 'opening') return 'soil';
  if (zone === 'above') return 'support';
  return Math.abs(x - pot.centreX) < FOOT_REACH * pot.bottomHalf ? 'pot' : 'background';
}

/** For each of `to` pixels the one of `from` that it lies in. */
function nearestPlaces(to: number, from: number): Int32Array {
  return Int32Array.from({ length: to }, (_, k) => Math.min(from - 1, Math.floor(((k + 0.5) * from) / to)));
}
