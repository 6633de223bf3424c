import type { ExpectedOpening } from './foot-curve.ts';
import type { PixelShares } from './model/pixel-shares.ts';
import { axisAt, meanByRow, type PotSides } from './pot-sides.ts';
import { type RowSums, rowSums, sumAbout } from './row-sums.ts';
import { type StraightSide, straightSides } from './straight-side.ts';

/** The rim as a level ellipse about the pot's axis, px of the picture. */
export interface RimPlace extends StraightSide {
  /** Row of its middle. */
  readonly y: number;
  /** Half its height ÷ half its width. */
  readonly opening: number;
  /** Whether soil shows in the opening; else the opening is mostly the expected one. */
  readonly openingSeen: boolean;
}

/** What is known of a pot before its rim; rows of the picture. */
export interface KnownOfPot {
  readonly sides: PotSides;
  /** Half-width in every row. */
  readonly halves: readonly number[];
  readonly top: number;
  readonly bottom: number;
  readonly expected: ExpectedOpening;
}

/** Roundest view of a rim that is tried, and the steps of the coarse and the fine search. */
const MOST_OPENING = 0.6;
const COARSE = { rows: 2, opening: 0.1 };
const FINE = { rows: 1, opening: 0.025 };
/** Soil lies inside the opening, which is this much smaller than the rim, and counts more than pot. */
const INSIDE_RIM = 0.92;
const SOIL_WORTH = 1.6;
/** The front of the opening, from this share of its depth below the rim's middle, shows no wall. */
const FRONT_SHARE = 0.4;
/** Soil over this share of the opening shows how far it opens. */
const LEAST_SOIL_SHARE = 0.15;
/** What an opening unlike the expected one costs, share of the squared half-width per squared deviation. */
const UNEXPECTED_COST = 0.01;
/** The sides this far below the rim are taken for straight; no pot is flatter than the second. Shares of the widest half. */
const STRAIGHT_SHARE = 0.3;
const FLATTEST_SHARE = 0.2;
const LEAST_HALF_PX = 3;

/**
 * Where the rim is: the row and the opening whose outline – half an ellipse on top, straight sides just below, the
 * traced ones further down – holds the most pot and soil and the least background, with the soil inside the opening
 * and none of the front wall in it.
 *
 * What leaves hide says nothing for or against; how far the rim should open to the view then decides.
 */
export function rimPlace(shares: PixelShares, pot: KnownOfPot): RimPlace | null {
  const ground = groundOf(shares, pot);
  const { top, bottom, widest } = ground;
  let best: Candidate | null = null;
  const tryRows = (from: number, to: number, openings: readonly number[], every: number) => {
    for (let y = from; y <= to; y += every) {
      for (const found of openingsAt(ground, y, openings)) {
        if (best === null || found.score > best.score) best = found;
      }
    }
  };
  const last = Math.floor(bottom - FLATTEST_SHARE * widest);
  tryRows(top, last, steps(0, MOST_OPENING, COARSE.opening), COARSE.rows);
  const coarse = best as Candidate | null;
  if (coarse === null) return null;
  const near = steps(
    Math.max(0, coarse.opening - COARSE.opening),
    coarse.opening + COARSE.opening,
    FINE.opening,
  );
  tryRows(Math.max(top, coarse.row - 3), Math.min(last, coarse.row + 3), near, FINE.rows);
  const { row, half, taper, opening } = best as unknown as Candidate;
  return {
    y: row + 0.5,
    half,
    taper,
    opening,
    openingSeen: soilShare(ground, row, half, opening) > LEAST_SOIL_SHARE,
  };
}

interface Candidate extends StraightSide {
  readonly row: number;
  readonly opening: number;
  readonly score: number;
}

/** All that is summed once and looked up often. */
interface Ground {
  readonly top: number;
  readonly bottom: number;
  readonly widest: number;
  readonly middles: readonly number[];
  readonly ware: RowSums;
  readonly soil: RowSums;
  readonly wall: RowSums;
  /** What the traced outline holds from a row down to the foot. */
  readonly below: Float64Array;
  readonly straight: (row: number) => StraightSide | null;
  readonly expected: ExpectedOpening;
}

function groundOf(shares: PixelShares, { sides, halves, top, bottom, expected }: KnownOfPot): Ground {
  const widest = halves.reduce((most, half) => Math.max(most, half), 0);
  const { width, height, background, pot, soil } = shares;
  const rows = {
    from: Math.max(0, Math.floor(top - 0.8 * widest)),
    until: Math.min(height, Math.ceil(bottom + 0.3 * widest) + 1),
    left: Math.max(0, Math.floor(sides.axis.x - 1.3 * widest)),
    right: Math.min(width, Math.ceil(sides.axis.x + 1.3 * widest)),
  };
  const ware = rowSums(
    width,
    rows,
    (i) => (pot[i] as number) + (soil[i] as number) - (background[i] as number),
  );
  const middles = Array.from({ length: rows.until }, (_, y) => axisAt(sides.axis, y + 0.5));
  const below = new Float64Array(bottom + 2);
  for (let y = bottom; y >= rows.from; y--) {
    below[y] = (below[y + 1] as number) + sumAbout(ware, y, middles[y] as number, halves[y] as number);
  }
  return {
    top: Math.max(0, Math.floor(top - 0.2 * widest)),
    bottom,
    widest,
    middles,
    ware,
    soil: rowSums(width, rows, (i) => soil[i] as number),
    wall: rowSums(width, rows, (i) => pot[i] as number),
    below,
    straight: straightSides(meanByRow(sides), STRAIGHT_SHARE * widest),
    expected,
  };
}

function openingsAt(ground: Ground, row: number, openings: readonly number[]): Candidate[] {
  const { bottom, widest, middles, ware, soil, wall, below, expected } = ground;
  const side = ground.straight(row);
  if (side === null || side.half < LEAST_HALF_PX) return [];
  const { half, taper } = side;
  const straightTo = Math.min(bottom, row + Math.round(STRAIGHT_SHARE * widest));
  let body = below[straightTo + 1] as number;
  for (let y = row; y <= straightTo; y++)
    body += sumAbout(ware, y, middles[y] as number, half - taper * (y - row));
  return openings.map((opening) => {
    let score = body - UNEXPECTED_COST * (half * ((opening - expected.opening) / expected.doubt)) ** 2;
    const high = opening * half;
    for (let y = Math.max(ware.from, Math.ceil(row - high)); y < row; y++) {
      score += sumAbout(ware, y, middles[y] as number, half * across((row - y) / (high + 0.5)));
    }
    const deep = INSIDE_RIM * high;
    const last = Math.min(ware.until - 1, Math.floor(row + deep));
    for (let y = Math.max(ware.from, Math.ceil(row - deep)); y <= last; y++) {
      const inner = INSIDE_RIM * half * across((row - y) / (deep + 0.5));
      score += SOIL_WORTH * sumAbout(soil, y, middles[y] as number, inner);
      if (y > row + FRONT_SHARE * deep) score -= sumAbout(wall, y, middles[y] as number, inner);
    }
    return { row, half, taper, opening, score };
  });
}

function soilShare({ middles, soil }: Ground, row: number, half: number, opening: number): number {
  let [sum, area] = [0, 0];
  const deep = opening * half;
  for (let y = Math.max(soil.from, Math.ceil(row - deep)); y <= Math.min(soil.until - 1, row + deep); y++) {
    const inner = half * across((row - y) / (deep + 0.5));
    sum += sumAbout(soil, y, middles[y] as number, inner);
    area += 2 * inner;
  }
  return sum / Math.max(1, area);
}

/** Half-width of the unit circle at this share of its radius from the middle. */
function across(share: number): number {
  return Math.sqrt(Math.max(0, 1 - share * share));
}

function steps(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, k) => from + k * step);
}
