import type { OpenCvDoor } from '../opencv/door.ts';
import { maskParts } from '../opencv/masks.ts';
import { maskOfLabels } from '../raster/mask-of-labels.ts';
import type { Mask } from '../raster/raster.ts';
import type { Evidence } from './evidence.ts';
import { isHangingLeaf } from './pot-clues.ts';
import type { PotShape } from './pot-shape.ts';

/** The rim's ellipse seen from slightly above: half its height, share of its half-width. */
const RIM_OPENING = 0.2;
/** From this share of the half-width below the rim, and with fewer log odds, things beside the pot are no leaf. */
const BESIDE_SHARE = 0.1;
const BESIDE_LEAF_ODDS = 0.3;
/** Without a pot, this share of the object's height from the top is canopy whatever its colour. */
const UPPER_SHARE = 0.35;
/** The body is taken a little wider than found, share of its half-width. */
const BODY_MARGIN = 0.06;

/**
 * Parts canopy from pot and soil. Inside the pot's body only what is leaf-coloured and unlike the pot stays (a leaf
 * hanging over the rim); in the rim's ellipse neutral colours are soil; above the rim everything stays; beside the
 * pot below the rim only parts that are leaf or petal stay (a saucer, a can or a shadow's core does not).
 */
export function splitPot(
  door: OpenCvDoor,
  object: Mask,
  plant: Evidence,
  pot: PotShape | null,
  roughness: Float32Array,
): Mask {
  const { width, height } = object;
  const data = object.data.slice();
  if (pot === null) dropFootColours(data, object, plant);
  else {
    for (let y = 0; y < height; y++) {
      const half = blockedHalf(pot, y);
      if (half <= 0) continue;
      const from = Math.max(0, Math.round(pot.centreX - half));
      const to = Math.min(width, Math.round(pot.centreX + half));
      for (let x = from; x < to; x++) {
        const i = y * width + x;
        if (!isHangingLeaf(plant.logOdds[i] as number, roughness[i] as number)) data[i] = 0;
      }
    }
  }
  if (pot !== null) dropBesidePot(data, object, plant, pot);
  return leafyParts(door, { width, height, data }, plant, pot);
}

/**
 * Without a pot's shape to go by, what the photo's own colours call pot or soil is dropped from the lower part of the
 * object, where a pot cut by the photo's edge or one the search missed would be.
 */
function dropFootColours(data: Uint8Array, object: Mask, plant: Evidence): void {
  const top = Math.floor(object.data.indexOf(1) / object.width);
  const bottom = Math.floor(object.data.lastIndexOf(1) / object.width);
  const from = Math.round(top + UPPER_SHARE * (bottom - top)) * object.width;
  for (let i = from; i < data.length; i++) if ((plant.logOdds[i] as number) < -0.5) data[i] = 0;
}

/** Below the rim, beside the pot, only leaf stays: shadow, saucer, can and table do not. */
function dropBesidePot(data: Uint8Array, { width }: Mask, plant: Evidence, pot: PotShape): void {
  const from = Math.round(pot.topY + BESIDE_SHARE * pot.topHalf) * width;
  for (let i = Math.max(0, from); i < data.length; i++) {
    if ((plant.logOdds[i] as number) < BESIDE_LEAF_ODDS) data[i] = 0;
  }
}

/** Half-width of what the pot and its soil may cover in row `y`; 0 above the rim's ellipse. */
function blockedHalf(pot: PotShape, y: number): number {
  const opening = RIM_OPENING * pot.topHalf;
  if (y < pot.topY - opening) return 0;
  const margin = 1 + BODY_MARGIN;
  if (y < pot.topY) return margin * pot.topHalf * Math.sqrt(1 - ((pot.topY - y) / opening) ** 2);
  const share = Math.min(1, (y - pot.topY) / Math.max(1, pot.bottomY - pot.topY));
  return margin * (pot.topHalf + share * (pot.bottomHalf - pot.topHalf));
}

function leafyParts(door: OpenCvDoor, mask: Mask, plant: Evidence, pot: PotShape | null): Mask {
  const { parts, labels } = maskParts(door, mask);
  const leaf = new Float32Array(parts.length + 1);
  const below = new Float32Array(parts.length + 1);
  const within = new Float32Array(parts.length + 1);
  for (let i = 0; i < labels.length; i++) {
    const label = labels[i] as number;
    if (label === 0) continue;
    leaf[label] = (leaf[label] as number) + ((plant.logOdds[i] as number) > 0 ? 1 : 0);
    const y = Math.floor(i / mask.width);
    if (pot === null || y <= pot.topY) continue;
    below[label] = (below[label] as number) + 1;
    if (Math.abs((i % mask.width) - pot.centreX) < blockedHalf(pot, y))
      within[label] = (within[label] as number) + 1;
  }
  const keeps = new Uint8Array(parts.length + 1);
  for (const { label, areaPx } of parts) {
    const leafShare = (leaf[label] as number) / areaPx;
    const belowShare = (below[label] as number) / areaPx;
    // A leaf-coloured patch that lies on the body alone is a label or a plaque.
    const onBody = (within[label] as number) > 0.9 * areaPx;
    keeps[label] = !onBody && leafShare > (belowShare > 0.5 ? 0.4 : 0.1) && areaPx > 8 ? 1 : 0;
  }
  return maskOfLabels(labels, keeps, mask);
}
