import type { OpenCvDoor } from '../opencv/door.ts';
import { maskParts } from '../opencv/masks.ts';
import { maskOfLabels } from '../raster/mask-of-labels.ts';
import { type Mask, maskArea } from '../raster/raster.ts';
import { openingFromFoot } from './foot-curve.ts';
import type { PixelShares } from './model/pixel-shares.ts';
import type { PotShape } from './pot-shape.ts';
import { axisAt, halfWidths, potSides } from './pot-sides.ts';
import { rimPlace } from './rim-place.ts';

/** A pot cut by the photo's side in more than this share of its rows has lost its width. */
const MOST_CUT_SHARE = 0.08;
/** Less of the pot's height than this share of its width is too little to know it by. */
const LEAST_HEIGHT_SHARE = 0.2;
/** Sides that bend or part from the axis more than this share of the width are no pot's. */
const MOST_AXIS_DOUBT = 0.06;

/**
 * The pot that the plant stands in, from a trained network's shares alone: what it takes for pot, the sides traced row
 * by row, and the rim laid where its ellipse fits pot, soil and background best. `null` when there is no pot or too
 * little of it shows: a wrong scale is worse than none.
 */
export function potInShares(door: OpenCvDoor, shares: PixelShares): PotShape | null {
  const ware = wareInShares(door, shares);
  if (ware === null || isCutBySide(ware)) return null;
  const sides = potSides(shares, ware);
  if (sides === null) return null;
  const span = {
    top: Math.floor(ware.data.indexOf(1) / ware.width),
    bottom: Math.floor(ware.data.lastIndexOf(1) / ware.width),
  };
  const halves = halfWidths(sides, span.bottom);
  const expected = openingFromFoot(ware, sides, Math.max(ware.width, ware.height));
  const rim = rimPlace(shares, { sides, halves, ...span, expected });
  if (rim === null || span.bottom - rim.y < LEAST_HEIGHT_SHARE * 2 * rim.half) return null;
  if (sides.axis.doubtPx > Math.max(1, MOST_AXIS_DOUBT * 2 * rim.half)) return null;
  return {
    centreX: axisAt(sides.axis, rim.y),
    topY: rim.y,
    bottomY: span.bottom + 1,
    topHalf: rim.half,
    bottomHalf: halves[span.bottom] as number,
    score: maskArea(ware),
    traced: { sides, rim, halves },
  };
}

function isCutBySide({ width, height, data }: Mask): boolean {
  let [rows, cut] = [0, 0];
  for (let y = 0; y < height; y++) {
    const row = data.subarray(y * width, (y + 1) * width);
    if (row.indexOf(1) < 0) continue;
    rows++;
    if (row[0] === 1 || row[width - 1] === 1) cut++;
  }
  return cut > MOST_CUT_SHARE * rows;
}

/** Share from which a pixel is taken for pot. */
const POT_SHARE = 0.5;
/** Smallest pot, share of the picture's pixels. */
const LEAST_POT = 0.0005;
/** Parts of a pot that leaves cut in pieces lie this near to one another, share of the main part's width. */
const NEAR_SHARE = 0.35;

/**
 * The pixels of the one pot that the plant stands in, as the network sees it, leaves before it left out; `null` when it
 * sees none. Of several the largest under the plant's middle is taken.
 */
function wareInShares(door: OpenCvDoor, shares: PixelShares): Mask | null {
  const { width, height, pot } = shares;
  const likely: Mask = { width, height, data: new Uint8Array(pot.length) };
  for (let i = 0; i < pot.length; i++) likely.data[i] = (pot[i] as number) > POT_SHARE ? 1 : 0;
  const { parts, labels } = maskParts(door, likely);
  const plant = plantSpan(shares);
  const weight = ({ areaPx, left, width: wide }: (typeof parts)[number]) =>
    areaPx * underPlant(plant, left + wide / 2);
  const [main] = [...parts].sort((one, other) => weight(other) - weight(one));
  if (main === undefined || weight(main) < LEAST_POT * width * height) return null;
  const keeps = new Uint8Array(parts.length + 1);
  const near = NEAR_SHARE * main.width;
  for (const part of parts) {
    const middle = part.left + part.width / 2;
    const inColumn = Math.abs(middle - main.left - main.width / 2) < 0.5 * main.width + near / 2;
    const gap = Math.max(main.top, part.top) - Math.min(main.top + main.height, part.top + part.height);
    if (part.areaPx > 4 && inColumn && part.width < 1.3 * main.width && gap < near) keeps[part.label] = 1;
  }
  return maskOfLabels(labels, keeps, likely);
}

interface Span {
  readonly middleX: number;
  readonly reach: number;
}

/** Middle and half-width of the plant, were it a disc; `null` without plant. */
function plantSpan({ width, foliage, flower }: PixelShares): Span | null {
  let [count, sum, squares] = [0, 0, 0];
  for (let i = 0; i < foliage.length; i++) {
    if ((foliage[i] as number) + (flower[i] as number) < 0.5) continue;
    const x = i % width;
    count++;
    sum += x;
    squares += x * x;
  }
  if (count < 20) return null;
  const middleX = sum / count;
  return { middleX, reach: 2 * Math.sqrt(Math.max(1, squares / count - middleX * middleX)) };
}

/** 1 under the plant's middle, less towards its sides: a plant leans, but stands in its pot. */
function underPlant(plant: Span | null, x: number): number {
  return plant === null ? 1 : Math.exp(-0.5 * ((x - plant.middleX) / (0.8 * plant.reach)) ** 2);
}
