import type { OpenCvDoor } from '../opencv/door.ts';
import { type MaskPart, maskParts } from '../opencv/masks.ts';
import type { Mask } from '../raster/raster.ts';
import type { Evidence } from './evidence.ts';

/** How the canopy meets the photo's edges. */
export interface EdgeContact {
  /** It is cut: a measure of it would be wrong. */
  readonly cut: boolean;
  /** Only a tip touches left, right or top. */
  readonly tip: boolean;
  /** It or its pot meets the lower edge. */
  readonly foot: boolean;
}

/** Contact with left, right or top, share of the canopy's longer side, from which the plant counts as cut. */
const CUT_SHARE = 0.03;
/** So near to an edge a px counts as touching it, half for each. */
const EDGE_PX = 2;
/** Contact with the lower edge, share of the canopy's width, from which a plant without a visible pot counts as cut. */
const FOOT_CUT_SHARE = 0.6;

/**
 * Whether the photo's edge cuts the plant. A leaf's tip that just touches is told apart from a crown that runs out;
 * at the lower edge leaves and pots often leave the photo without harm to the outline above.
 */
export function edgeContact(canopy: Mask, potSeen: boolean): EdgeContact {
  const { width, height, data } = canopy;
  let [left, right, top, foot] = [0, 0, 0, 0];
  let [minX, maxX, minY, maxY] = [width, -1, height, -1];
  for (let y = 0; y < height; y++) {
    const row = data.subarray(y * width, (y + 1) * width);
    const first = row.indexOf(1);
    if (first < 0) continue;
    minX = Math.min(minX, first);
    maxX = Math.max(maxX, row.lastIndexOf(1));
    minY = Math.min(minY, y);
    maxY = y;
    left += 0.5 * sumOf(row.subarray(0, EDGE_PX));
    right += 0.5 * sumOf(row.subarray(Math.max(0, width - EDGE_PX)));
    if (y < EDGE_PX) top += 0.5 * sumOf(row);
    if (y >= height - EDGE_PX) foot += 0.5 * sumOf(row);
  }
  const wide = maxX - minX + 1;
  const most = Math.max(left, right, top);
  const cut =
    most > CUT_SHARE * Math.max(wide, maxY - minY + 1) || (!potSeen && foot > FOOT_CUT_SHARE * wide);
  return { cut, tip: most > 0, foot: foot > 0 };
}

function sumOf(row: Uint8Array): number {
  let sum = 0;
  for (let x = 0; x < row.length; x++) sum += row[x] as number;
  return sum;
}

/** A second plant counts from this share of the first one's area. */
const SECOND_SHARE = 0.4;
/** Least clear space between two plants, share of the photo's width. */
const CLEAR_SHARE = 0.01;

/**
 * Whether two plants of similar size stand side by side: two parts of the object (plant with pot), each mostly above
 * a foot at a similar height, each with a fair share of leaf colour, and clear space between them. Plants whose leaves
 * touch are not told apart.
 */
export function showsTwoPlants(door: OpenCvDoor, object: Mask, plant: Evidence): boolean {
  const { parts, labels } = maskParts(door, object);
  const [first, second] = parts;
  if (first === undefined || second === undefined || second.areaPx < SECOND_SHARE * first.areaPx)
    return false;
  const gap =
    Math.max(first.left, second.left) - Math.min(first.left + first.width, second.left + second.width);
  if (gap < CLEAR_SHARE * object.width) return false;
  const feet = Math.abs(first.top + first.height - (second.top + second.height));
  if (feet > 0.25 * Math.max(first.height, second.height)) return false;
  return [first, second].every((part) => leafShare(part, labels, plant) > 0.25);
}

function leafShare(part: MaskPart, labels: Int32Array, plant: Evidence): number {
  let leaf = 0;
  for (let i = 0; i < labels.length; i++) {
    if (labels[i] === part.label && (plant.logOdds[i] as number) > 0.5) leaf++;
  }
  return leaf / part.areaPx;
}
