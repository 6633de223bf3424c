import type { Mask } from '../raster/raster.ts';
import { axisAt, type PotSides } from './pot-sides.ts';
import type { RimPlace } from './rim-place.ts';

/** A pot's body as seen from the side: a trapezoid with level top and bottom, in px of the picture it was found on. */
export interface PotShape {
  readonly centreX: number;
  /** Row of the rim, where the body ends upward. */
  readonly topY: number;
  readonly bottomY: number;
  /** Half the width at the rim and at the foot. */
  readonly topHalf: number;
  readonly bottomHalf: number;
  /** Sum of what speaks for it, px: larger is surer. */
  readonly score: number;
  /** The true outline, where a trained network showed it; absent for the bare trapezoid. */
  readonly traced?: TracedPot;
}

/** A pot whose sides and rim were traced one by one; px of the picture. */
export interface TracedPot {
  readonly sides: PotSides;
  readonly rim: RimPlace;
  /** Half-width in every row from the picture's top to the pot's foot. */
  readonly halves: readonly number[];
}

/** Half the pot's width in row `y`, from the rim down; beyond the foot as wide as there. */
export function potHalfAt(pot: PotShape, y: number): number {
  const traced = pot.traced?.halves;
  if (traced !== undefined)
    return traced[Math.max(0, Math.min(traced.length - 1, Math.floor(y)))] ?? pot.bottomHalf;
  const share = Math.max(0, Math.min(1, (y - pot.topY) / Math.max(1, pot.bottomY - pot.topY)));
  return pot.topHalf + share * (pot.bottomHalf - pot.topHalf);
}

/** The pot's middle in row `y`. */
export function potMiddleAt(pot: PotShape, y: number): number {
  return pot.traced === undefined ? pot.centreX : axisAt(pot.traced.sides.axis, y);
}

/** Half the height of an opening that was not traced, share of its half-width. */
const USUAL_OPENING = 0.2;
/** The body is taken a little wider than found, share of its half-width. */
const BODY_MARGIN = 0.06;

/** Where a place lies to the pot: over the rim, within its ellipse, before the body, or beside it below the rim. */
export function potZone(pot: PotShape, x: number, y: number): 'above' | 'opening' | 'body' | 'beside' {
  const off = Math.abs(x - potMiddleAt(pot, y)) / (1 + BODY_MARGIN);
  const up = pot.topY - y;
  if (up > 0) {
    const opening = (pot.traced?.rim.opening ?? USUAL_OPENING) * pot.topHalf;
    return up < opening && off < pot.topHalf * Math.sqrt(1 - (up / opening) ** 2) ? 'opening' : 'above';
  }
  return y < pot.bottomY + BODY_MARGIN * pot.topHalf && off < potHalfAt(pot, y) ? 'body' : 'beside';
}

/** What the pot is looked for in: for each pixel how much it speaks for a pot's body (about -1 to 1), and side edges. */
export interface PotClues {
  readonly width: number;
  readonly height: number;
  /** Body clue: 1 like the pot, 0 cannot tell, negative backdrop or leaf. */
  readonly body: Float32Array;
  /** Strength of an upright edge at each pixel, 0–1. */
  readonly side: Float32Array;
}

/** Half-width gained per row upward: a cylinder, and the usual tapers of pots up to 45°. */
const TAPERS = [-0.08, 0, 0.06, 0.12, 0.18, 0.24, 0.32, 0.42];
/** Narrowest and widest pot looked for, share of the picture's width. */
const NARROWEST_SHARE = 0.04;
const WIDEST_SHARE = 0.7;
/** A pot's height is between these shares of its rim's width. */
const FLATTEST = 0.3;
const TALLEST = 2.2;
/** Least score, share of the picture's pixels. */
const LEAST_SCORE = 0.002;
/** What an edge along one row's side is worth, in px of body. */
const SIDE_WORTH = 0.3;

/** Coarse search: widths grow by this factor, places by this share of the half-width. */
const WIDTH_STEP = 1.12;
const PLACE_STEP = 0.12;

/**
 * The trapezoid that gathers most clues, or `null` when none does.
 *
 * For every place, width and taper the rows are summed inside the sides, minus what spills over them, plus the
 * edges along them; the best run of rows is the pot (maximum-sum run, Kadane). Leaves hanging over the body
 * cost little, as the body goes on below and beside them. The best of a coarse search is then moved in small steps.
 */
export function findPotShape(clues: PotClues, object: Mask, plant: PlantColumn | null): PotShape | null {
  const span = spanOf(object);
  if (span === null) return null;
  const { width, height } = clues;
  const ground: Ground = { width, height, sums: rowSums(clues), sides: widened(clues), levelY: span.bottom };
  let best: Candidate | null = null;
  const consider = (half: number, centreX: number, taper: number, every: number) => {
    const found = bestRows(ground, centreX, half, taper, every);
    if (found === null) return;
    const shape = { ...found, score: found.score * underPlant(plant, centreX) };
    if (best === null || shape.score > best.shape.score) best = { shape, half, taper };
  };
  for (let half = (NARROWEST_SHARE * width) / 2; half < (WIDEST_SHARE * width) / 2; half *= WIDTH_STEP) {
    const step = Math.max(1, PLACE_STEP * half);
    for (let centreX = span.left; centreX <= span.right; centreX += step) {
      for (const taper of TAPERS) consider(half, centreX, taper, 2);
    }
  }
  const coarse = best as Candidate | null;
  if (coarse === null) return null;
  for (let off = -0.12; off <= 0.121; off += 0.03) {
    for (let widen = 0.92; widen <= 1.09; widen += 0.02) {
      for (let lean = -0.06; lean <= 0.061; lean += 0.03) {
        consider(coarse.half * widen, coarse.shape.centreX + off * coarse.half, coarse.taper + lean, 1);
      }
    }
  }
  const { shape } = best as unknown as Candidate;
  return shape.score < LEAST_SCORE * width * height ? null : shape;
}

/** Where the plant stands over its pot. */
export interface PlantColumn {
  readonly middleX: number;
  /** Half the canopy's width, px. */
  readonly reach: number;
}

/** 1 for a pot under the plant's middle, less towards the canopy's sides: a plant leans, but stands over its pot. */
function underPlant(plant: PlantColumn | null, centreX: number): number {
  if (plant === null) return 1;
  const off = (centreX - plant.middleX) / plant.reach;
  return Math.max(0, 1 - 1.5 * off * off);
}

interface Candidate {
  readonly shape: PotShape;
  readonly half: number;
  readonly taper: number;
}

interface Ground {
  readonly width: number;
  readonly height: number;
  readonly sums: Float32Array;
  readonly sides: Float32Array;
  /** The row at which a candidate's half-width is given. */
  readonly levelY: number;
}

/**
 * The best run of rows for a column; `half` is the half-width at the level row. `every` rows one is looked at and
 * counts for all.
 */
function bestRows(
  ground: Ground,
  centreX: number,
  half: number,
  taper: number,
  every: number,
): PotShape | null {
  const { width, height, sums, sides, levelY } = ground;
  let [sum, from] = [0, height - 1];
  let [bestSum, bestTop, bestBottom] = [0, -1, -1];
  for (let y = height - 1; y >= 0; y -= every) {
    const now = half + taper * (levelY - y);
    if (now < 3) continue;
    if (from - y > TALLEST * 2 * now) break;
    const spill = Math.max(2, Math.round(0.12 * now));
    const left = Math.round(centreX - now);
    const right = Math.round(centreX + now);
    const row = y * (width + 1);
    const l = Math.max(left, 0);
    const r = Math.min(right, width);
    if (r <= l) continue;
    const atLeft = sums[row + l] as number;
    const atRight = sums[row + r] as number;
    const spillLeft = atLeft - (sums[row + (left < spill ? 0 : left - spill)] as number);
    const spillRight = (sums[row + Math.min(right + spill, width)] as number) - atRight;
    const outside = Math.max(spillLeft, 0) + Math.max(spillRight, 0);
    const one = left < 0 ? 0 : (sides[y * width + left] as number);
    const other = right >= width ? 0 : (sides[y * width + right] as number);
    // A pot has both its sides: the weaker edge counts three times, the stronger once.
    const edges = one + other + Math.min(one, other);
    sum += every * (atRight - atLeft - 1.5 * outside + SIDE_WORTH * now * edges);
    if (sum <= 0) [sum, from] = [0, y - every];
    else if (sum > bestSum) [bestSum, bestTop, bestBottom] = [sum, y, from];
  }
  if (bestTop < 0) return null;
  const topHalf = half + taper * (levelY - bestTop);
  const bottomHalf = half + taper * (levelY - bestBottom);
  if (bestBottom - bestTop < FLATTEST * 2 * topHalf) return null;
  return { centreX, topY: bestTop, bottomY: bestBottom, topHalf, bottomHalf, score: bestSum };
}

/** Running sums along each row, one longer than the row. */
function rowSums({ width, height, body }: PotClues): Float32Array {
  const sums = new Float32Array((width + 1) * height);
  for (let y = 0; y < height; y++) {
    let sum = 0;
    for (let x = 0; x < width; x++) {
      sum += body[y * width + x] as number;
      sums[y * (width + 1) + x + 1] = sum;
    }
  }
  return sums;
}

/** Each pixel's strongest side edge among itself and its neighbours left and right. */
function widened({ width, height, side }: PotClues): Float32Array {
  const sides = new Float32Array(side.length);
  for (let y = 0; y < height; y++) {
    for (let i = y * width + 1; i < (y + 1) * width - 1; i++) {
      sides[i] = Math.max(side[i - 1] as number, side[i] as number, side[i + 1] as number);
    }
  }
  return sides;
}

/** The mask's columns and its lowest row, specks aside; `null` when it is empty. */
function spanOf({ width, height, data }: Mask): { left: number; right: number; bottom: number } | null {
  let [left, right, bottom] = [width, -1, -1];
  for (let y = 0; y < height; y++) {
    let count = 0;
    for (let x = 0; x < width; x++) {
      if (data[y * width + x] === 0) continue;
      count++;
      left = Math.min(left, x);
      right = Math.max(right, x);
    }
    if (count >= Math.max(3, 0.01 * width)) bottom = y;
  }
  return right < 0 || bottom < 0 ? null : { left, right, bottom };
}
