import type { Mask } from '../raster/raster.ts';

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
/** What an edge along one row's side is worth, in px of body. */
const SIDE_WORTH = 0.2;

/**
 * The trapezoid that gathers most clues, or `null` when none does.
 *
 * For every place, width and taper the rows are summed inside the sides, minus what spills over them, plus the
 * edges along them; the best run of rows is the pot (maximum-sum run, Kadane). Leaves hanging over the body
 * cost little, as the body goes on below and beside them.
 */
export function findPotShape(clues: PotClues, foot: Mask): PotShape | null {
  const sums = rowSums(clues);
  const { width, height } = clues;
  const footY = lowestRow(foot);
  if (footY === null) return null;
  let best: PotShape | null = null;
  const step = Math.max(1, Math.round(width / 160));
  for (let half = (NARROWEST_SHARE * width) / 2; half < (WIDEST_SHARE * width) / 2; half *= 1.07) {
    for (let centreX = half * 0.6; centreX < width - half * 0.6; centreX += step) {
      for (const taper of TAPERS) {
        const shape = bestRows({ clues, sums, centreX, half, taper, footY });
        if (shape !== null && (best === null || shape.score > best.score)) best = shape;
      }
    }
  }
  return best === null || best.score < 0.002 * width * height ? null : best;
}

interface Column {
  readonly clues: PotClues;
  readonly sums: Float32Array;
  readonly centreX: number;
  readonly half: number;
  readonly taper: number;
  readonly footY: number;
}

/** Goes up from the foot; `half` is the half-width at the foot. */
function bestRows({ clues, sums, centreX, half, taper, footY }: Column): PotShape | null {
  const { width } = clues;
  const tallest = TALLEST * 2 * (half + taper * 2 * half);
  let [sum, bestSum, bestTop] = [0, 0, -1];
  for (let y = footY; y >= Math.max(0, footY - tallest); y--) {
    const now = half + taper * (footY - y);
    if (now < 3) break;
    const left = Math.round(centreX - now);
    const right = Math.round(centreX + now);
    const spill = Math.max(2, Math.round(0.12 * now));
    const inside = runSum(sums, width, y, left, right);
    const outside =
      Math.max(0, runSum(sums, width, y, left - spill, left)) +
      Math.max(0, runSum(sums, width, y, right, right + spill));
    // A pot has both its sides: the weaker edge counts twice, the stronger once.
    const [one, other] = [edgeNear(clues, y, left), edgeNear(clues, y, right)];
    const edges = 2 * Math.min(one, other) + Math.max(one, other);
    sum += inside - 1.5 * outside + SIDE_WORTH * now * edges;
    if (sum > bestSum) [bestSum, bestTop] = [sum, y];
  }
  if (bestTop < 0) return null;
  const topHalf = half + taper * (footY - bestTop);
  const tall = footY - bestTop;
  if (tall < FLATTEST * 2 * topHalf) return null;
  return { centreX, topY: bestTop, bottomY: footY, topHalf, bottomHalf: half, score: bestSum };
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

function runSum(sums: Float32Array, width: number, y: number, left: number, right: number): number {
  const from = Math.max(0, Math.min(width, left));
  const to = Math.max(from, Math.min(width, right));
  const row = y * (width + 1);
  return (sums[row + to] as number) - (sums[row + from] as number);
}

function edgeNear({ width, side }: PotClues, y: number, x: number): number {
  let most = 0;
  for (let at = Math.max(0, x - 1); at <= Math.min(width - 1, x + 1); at++) {
    most = Math.max(most, side[y * width + at] as number);
  }
  return most;
}

/** The lowest row in which the mask has more than a speck. */
function lowestRow({ width, height, data }: Mask): number | null {
  for (let y = height - 1; y >= 0; y--) {
    let count = 0;
    for (let x = 0; x < width; x++) count += data[y * width + x] as number;
    if (count >= Math.max(3, 0.01 * width)) return y;
  }
  return null;
}
