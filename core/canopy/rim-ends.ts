import type { LabPicture } from '../raster/lab.ts';
import type { Raster } from '../raster/raster.ts';
import type { Evidence } from './evidence.ts';
import { USUAL_OPENING } from './foot-curve.ts';
import type { Pot } from './found-plant.ts';
import { isHangingLeaf } from './pot-clues.ts';
import type { PotShape } from './pot-shape.ts';
import { rimInRaster } from './rim-in-raster.ts';

/** How far from the found shape's side the true side is looked for, share of the half-width. */
const SEARCH_SHARE = 0.14;
/** Rows looked at: from this share of the half-width above the rim to this one below. */
const ABOVE_SHARE = 0.15;
const BELOW_SHARE = 0.5;
/** Half of the rows this near below the rim must show the side, share of the half-width. */
const COLLAR_SHARE = 0.25;

/** Difference of the two ends' distance from the middle that a round rim may show, share of the half-width. */
const MOST_MISMATCH = 0.06;
/** Log odds from which a pixel is taken for leaf. */
const LEAF_ODDS = 0.5;

/** Standard deviation of the rim's width, share of it: both ends seen, one of them, and neither. */
const SEEN_DOUBT = 0.012;
const MIRRORED_DOUBT = 0.03;
const COARSE_DOUBT = 0.06;

/** Opinions on "something stands here" and on "plant rather than pot", of the picture's size. */
export interface RimClues {
  readonly object: Evidence;
  readonly plant: Evidence;
  /** Mean change of colour from pixel to pixel nearby, ΔE. */
  readonly roughness: Float32Array;
}

/**
 * The rim's outer ends from the coarse shape: row by row the strongest upright edge near each side, and the outermost
 * place that several rows agree on as the rim, which usually stands out as a collar. An end covered by leaves is
 * mirrored from the other one about the middle of the body.
 *
 * @returns ends in px of the full raster, `scale` raster px per px of the picture
 */
export function rimEnds(
  picture: LabPicture,
  clues: RimClues,
  pot: PotShape,
  scale: number,
  raster?: Raster,
): Pot {
  if (pot.traced !== undefined && raster !== undefined) return rimInRaster(raster, pot.traced, scale);
  const leftRows = sideRows(picture, clues, pot, -1);
  const rightRows = sideRows(picture, clues, pot, 1);
  const lean = leanOf(leftRows, rightRows);
  let left = endOf(leftRows, pot);
  let right = endOf(rightRows, pot);
  // Two ends that do not match: a leaf that hangs beside the rim reads too far out.
  const mismatch = left === null || right === null ? 0 : left.out - right.out - lean;
  if (mismatch > MOST_MISMATCH * pot.topHalf) left = null;
  if (mismatch < -MOST_MISMATCH * pot.topHalf) right = null;
  const coarse: RimEnd = { out: pot.topHalf, y: pot.topY };
  const [l, r] = [left ?? mirrored(right, lean) ?? coarse, right ?? mirrored(left, -lean) ?? coarse];
  const halfWidthPx = ((l.out + r.out) / 2) * scale;
  return {
    rimLeftPx: [(pot.centreX - l.out) * scale, l.y * scale],
    rimRightPx: [(pot.centreX + r.out) * scale, r.y * scale],
    rim: {
      centrePx: [(pot.centreX + (r.out - l.out) / 2) * scale, ((l.y + r.y) / 2) * scale],
      halfWidthPx,
      halfHeightPx: USUAL_OPENING.opening * halfWidthPx,
      heightSeen: false,
    },
    rimDoubtPx:
      2 *
      halfWidthPx *
      (left === null && right === null
        ? COARSE_DOUBT
        : left === null || right === null
          ? MIRRORED_DOUBT
          : SEEN_DOUBT),
    rimTaper: taperOf(pot),
  };
}

/** Distance from the shape's middle, and row. */
interface RimEnd {
  readonly out: number;
  readonly y: number;
}

/** Median of left minus right distance over the rows that show both sides: how far off the middle the shape was. */
function leanOf(leftRows: readonly RimEnd[], rightRows: readonly RimEnd[]): number {
  const right = new Map(rightRows.map(({ y, out }) => [y, out]));
  const leans = leftRows.flatMap(({ y, out }) => {
    const other = right.get(y);
    return other === undefined ? [] : [out - other];
  });
  return leans.sort((one, other) => one - other)[leans.length >> 1] ?? 0;
}

function mirrored(end: RimEnd | null, lean: number): RimEnd | null {
  return end === null ? null : { out: end.out + lean, y: end.y };
}

/** Half-width lost per row downward. */
function taperOf({ topHalf, bottomHalf, topY, bottomY }: PotShape): number {
  return (topHalf - bottomHalf) / Math.max(1, bottomY - topY);
}

function sideRows(picture: LabPicture, clues: RimClues, pot: PotShape, side: -1 | 1): RimEnd[] {
  const rows: RimEnd[] = [];
  const slope = taperOf(pot);
  const reach = Math.max(3, SEARCH_SHARE * pot.topHalf);
  const from = Math.max(1, Math.round(pot.topY - ABOVE_SHARE * pot.topHalf));
  const to = Math.min(picture.height - 2, Math.round(pot.topY + BELOW_SHARE * pot.topHalf));
  for (let y = from; y <= to; y++) {
    const half = pot.topHalf + slope * (pot.topY - y);
    const out = edgeAlong(picture, clues, { y, centreX: pot.centreX, half, reach, side });
    if (out !== null) rows.push({ y, out });
  }
  return rows;
}

/** The rim's end among a side's rows; `null` when too little of the side shows near the rim. */
function endOf(rows: readonly RimEnd[], pot: PotShape): RimEnd | null {
  const collar = COLLAR_SHARE * pot.topHalf;
  const shown = rows.filter(({ y }) => y >= pot.topY && y <= pot.topY + collar);
  if (shown.length < Math.max(4, 0.5 * collar)) return null;
  // The third largest, so that a stray row or two do not set the rim.
  const inBody = rows.filter(({ y }) => y >= pot.topY);
  const rim = inBody.map(({ out }) => out).sort((one, other) => other - one)[2] as number;
  return { out: rim, y: rimRow(rows, rim, pot.topHalf) };
}

/**
 * The row of the rim's end: from the widest row upward as long as the side keeps its width. Seen from slightly above,
 * the rim is an ellipse that keeps its width to a fiftieth for a fifth of its half-height, which is taken off again.
 */
function rimRow(rows: readonly RimEnd[], rim: number, half: number): number {
  const wide = rows.filter(({ out }) => Math.abs(out - rim) < Math.max(1, 0.02 * half)).map(({ y }) => y);
  let top = wide.at(Math.floor(wide.length / 2)) as number;
  for (const y of wide.toReversed()) if (y < top && top - y <= 2) top = y;
  return top + 0.035 * half;
}

interface EdgeSearch {
  readonly y: number;
  readonly centreX: number;
  readonly half: number;
  readonly reach: number;
  readonly side: -1 | 1;
}

/** Distance from the centre of the strongest edge near the expected side, to a fraction of a px; `null` when none is clear. */
function edgeAlong(
  picture: LabPicture,
  clues: RimClues,
  { y, centreX, half, reach, side }: EdgeSearch,
): number | null {
  const strength = (out: number): number => {
    const x = Math.round(centreX + side * out);
    if (x < 1 || x >= picture.width - 1) return 0;
    const i = y * picture.width + x;
    const step = deltaBetween(picture, i - 1, i + 1);
    // The side of a pot has the pot within, never a leaf, and most often the backdrop without.
    const inner = i - 3 * side;
    if (isHangingLeaf(clues.plant.logOdds[inner] ?? 0, clues.roughness[inner] ?? 0)) return 0;
    const within = clues.object.logOdds[i - 2 * side] ?? 0;
    const without = clues.object.logOdds[i + 2 * side] ?? 0;
    const overLeaf = (clues.plant.logOdds[i + 2 * side] ?? 0) > LEAF_ODDS && without > 0;
    return step * (within > without ? 1 : 0.5) * (overLeaf ? 0.5 : 1);
  };
  let [best, at] = [0, 0];
  for (let out = half - reach; out <= half + reach; out++) {
    const here = strength(out) * (1 - 0.4 * Math.abs((out - half) / reach));
    if (here > best) [best, at] = [here, out];
  }
  if (best < 3) return null;
  const [before, here, after] = [strength(at - 1), strength(at), strength(at + 1)];
  const bend = before - 2 * here + after;
  const shift = bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (before - after)) / bend)) : 0;
  return Math.abs(Math.round(centreX + side * at) + 0.5 - centreX) + shift;
}

function deltaBetween({ l, a, b }: LabPicture, one: number, other: number): number {
  return Math.hypot(
    (l[one] as number) - (l[other] as number),
    (a[one] as number) - (a[other] as number),
    (b[one] as number) - (b[other] as number),
  );
}

/** The rim's ends in px of a copy `scale` times as large. */
export function rimOnCopy(
  { rimLeftPx, rimRightPx }: Pot,
  scale: number,
): Pick<Pot, 'rimLeftPx' | 'rimRightPx'> {
  return {
    rimLeftPx: [rimLeftPx[0] * scale, rimLeftPx[1] * scale],
    rimRightPx: [rimRightPx[0] * scale, rimRightPx[1] * scale],
  };
}
