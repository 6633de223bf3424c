import type { LabPicture } from '../raster/lab.ts';
import type { Evidence } from './evidence.ts';
import type { Pot } from './found-plant.ts';
import type { PotShape } from './pot-shape.ts';

/** How far from the found shape's side the true side is looked for, share of the half-width. */
const SEARCH_SHARE = 0.14;
/** Rows looked at: from this share of the half-width above the rim to this one below. */
const ABOVE_SHARE = 0.15;
const BELOW_SHARE = 0.5;

/**
 * The rim's outer ends from the coarse shape: row by row the strongest upright edge near each side, a straight side
 * fitted through their middle values, and the outermost place that several rows agree on as the rim, which usually
 * stands out as a collar.
 *
 * @returns ends in px of the full raster, `scale` raster px per px of the picture
 */
export function rimEnds(picture: LabPicture, object: Evidence, pot: PotShape, scale: number): Pot {
  const left = sideOf(picture, object, pot, -1);
  const right = sideOf(picture, object, pot, 1);
  return {
    rimLeftPx: [left.x * scale, left.y * scale],
    rimRightPx: [right.x * scale, right.y * scale],
  };
}

function sideOf(
  picture: LabPicture,
  object: Evidence,
  pot: PotShape,
  side: -1 | 1,
): { x: number; y: number } {
  const rows: { y: number; out: number }[] = [];
  const slope = (pot.topHalf - pot.bottomHalf) / Math.max(1, pot.bottomY - pot.topY);
  const reach = Math.max(3, SEARCH_SHARE * pot.topHalf);
  const from = Math.max(1, Math.round(pot.topY - ABOVE_SHARE * pot.topHalf));
  const to = Math.min(picture.height - 2, Math.round(pot.topY + BELOW_SHARE * pot.topHalf));
  for (let y = from; y <= to; y++) {
    const half = pot.topHalf + slope * (pot.topY - y);
    const out = edgeAlong(picture, object, { y, centreX: pot.centreX, half, reach, side });
    if (out !== null) rows.push({ y, out });
  }
  const inBody = rows.filter(({ y }) => y >= pot.topY);
  if (inBody.length < 4) return { x: pot.centreX + side * pot.topHalf, y: pot.topY };
  // The second of every ten largest, so that one stray row does not set the rim.
  const outs = inBody.map(({ out }) => out).sort((one, other) => other - one);
  const rim = outs[Math.floor(0.15 * outs.length)] as number;
  const near = rows.filter(({ out }) => Math.abs(out - rim) < Math.max(1, 0.02 * pot.topHalf));
  const y = Math.min(...near.map((row) => row.y));
  return { x: pot.centreX + side * rim, y: Math.max(y, pot.topY - 0.1 * pot.topHalf) };
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
  object: Evidence,
  { y, centreX, half, reach, side }: EdgeSearch,
): number | null {
  const strength = (out: number): number => {
    const x = Math.round(centreX + side * out);
    if (x < 1 || x >= picture.width - 1) return 0;
    const i = y * picture.width + x;
    const step = deltaBetween(picture, i - 1, i + 1);
    // The side of a pot has the pot within and the backdrop without.
    const within = object.logOdds[i - 2 * side] ?? 0;
    const without = object.logOdds[i + 2 * side] ?? 0;
    return step * (within > without ? 1 : 0.5);
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
