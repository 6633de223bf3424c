import type { PointPx, Raster } from '../raster/raster.ts';
import type { Pot } from './found-plant.ts';
import type { TracedPot } from './pot-shape.ts';
import { axisAt, median, type SidePoint } from './pot-sides.ts';

/** The sides from the rim to this share of the half-width below it are the rim's own; further down they only hint. */
const COLLAR_SHARE = 0.16;
const HINT_SHARE = 0.45;
/** How far from the traced side its sharp edge is looked for, px of the picture it was traced on. */
const SEARCH_PX = 2;
/** Sum of the differences of red, green and blue that makes an edge. */
const LEAST_STEP = 12;
/** Fewest rows whose median is the rim's. */
const LEAST_ROWS = 3;

/** Standard deviations, share of the half-width: of a side seen at the rim, and of one per half-width that it hides below. */
const SEEN_DOUBT = 0.004;
const HIDDEN_DOUBT = 0.012;
const HIDDEN_SLOPE_DOUBT = 0.08;

/**
 * The rim's ends sharpened on the full raster: beside every traced row the strongest edge is sought, and the median
 * shift of the rows just below the rim moves its end. An end that leaves hide keeps the place that the rest of the side
 * and the other end give it, and widens the rim's doubt.
 *
 * @param scale raster px per px of the picture that the pot was traced on
 */
export function rimInRaster(raster: Raster, { sides, rim }: TracedPot, scale: number): Pot {
  const left = endOf(raster, sides.left, -1);
  const right = endOf(raster, sides.right, 1);
  const middle = axisAt(sides.axis, rim.y) * scale;
  // A hidden end follows the seen one, as a rim is round.
  const [one, other] = [left.doubtPx, right.doubtPx];
  const mirroredDoubt = Math.hypot(2 * sides.axis.doubtPx * scale, Math.min(one, other));
  const leftOut = one > mirroredDoubt ? right.out : left.out;
  const rightOut = other > mirroredDoubt ? left.out : right.out;
  const y = rim.y * scale;
  const ends: [PointPx, PointPx] = [
    [middle - leftOut, y],
    [middle + rightOut, y],
  ];
  const halfWidthPx = (leftOut + rightOut) / 2;
  return {
    rimLeftPx: ends[0],
    rimRightPx: ends[1],
    rim: {
      centrePx: [(ends[0][0] + ends[1][0]) / 2, y],
      halfWidthPx,
      halfHeightPx: rim.opening * halfWidthPx,
      heightSeen: rim.openingSeen,
    },
    rimDoubtPx: Math.hypot(Math.min(one, mirroredDoubt), Math.min(other, mirroredDoubt)),
    rimTaper: rim.taper,
  };

  /** Distance of the end from the axis, px of the raster, and its standard deviation. */
  function endOf(
    picture: Raster,
    rows: readonly SidePoint[],
    side: -1 | 1,
  ): { out: number; doubtPx: number } {
    const half = rim.half * scale;
    const below = rows.filter(({ y: at }) => at >= rim.y - 0.5);
    const shiftsOf = (reach: number): number[] =>
      below
        .filter(({ y: at }) => at <= rim.y + reach * rim.half)
        .flatMap((point) => shiftsBeside(picture, point, side));
    const collar = shiftsOf(COLLAR_SHARE);
    if (collar.length >= LEAST_ROWS) {
      const shift = median(collar);
      const spread = median(collar.map((one) => Math.abs(one - shift)));
      return { out: half + shift, doubtPx: Math.hypot(SEEN_DOUBT * half, spread / Math.sqrt(collar.length)) };
    }
    const hint = shiftsOf(HINT_SHARE);
    const hidden = ((below[0]?.y ?? rim.y + rim.half) - rim.y) / rim.half;
    return {
      out: half + (hint.length >= LEAST_ROWS ? median(hint) : 0),
      doubtPx: half * (HIDDEN_DOUBT + HIDDEN_SLOPE_DOUBT * Math.min(1, hidden)),
    };
  }

  /** How much further out than the straight side the sharp edge lies in the raster's rows of one traced row. */
  function shiftsBeside(picture: Raster, { y: row, out }: SidePoint, side: -1 | 1): number[] {
    const straight = (rim.half - rim.taper * (row - rim.y)) * scale;
    const shifts: number[] = [];
    const from = Math.max(0, Math.floor((row - 0.5) * scale));
    const until = Math.min(picture.height, Math.max(from + 1, Math.floor((row + 0.5) * scale)));
    for (let at = from; at < until; at++) {
      const edge = sharpEdge(
        picture,
        at,
        axisAt(sides.axis, row) * scale + side * out * scale,
        SEARCH_PX * scale,
      );
      if (edge !== null) shifts.push(side * (edge - axisAt(sides.axis, row) * scale) - straight);
    }
    return shifts;
  }
}

/** Place of the strongest upright edge of a row near `x`, to a fraction of a px; `null` when there is none. */
function sharpEdge({ width, data }: Raster, row: number, x: number, reach: number): number | null {
  const from = Math.max(2, Math.floor(x - reach));
  const until = Math.min(width - 3, Math.ceil(x + reach));
  const stepAt = (at: number): number => {
    // Between pixel at-1 and pixel at, each side the mean of two.
    let step = 0;
    for (let c = 0; c < 3; c++) {
      const i = 3 * (row * width + at) + c;
      step += Math.abs(
        (data[i] as number) + (data[i + 3] as number) - (data[i - 3] as number) - (data[i - 6] as number),
      );
    }
    return step / 2;
  };
  let [best, place] = [0, -1];
  for (let at = from; at <= until; at++) {
    const off = (at - x) / reach;
    const weighed = stepAt(at) * Math.exp(-off * off);
    if (weighed > best) [best, place] = [weighed, at];
  }
  if (best < LEAST_STEP) return null;
  const [before, here, after] = [stepAt(place - 1), stepAt(place), stepAt(place + 1)];
  const bend = before - 2 * here + after;
  return place + (bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (before - after)) / bend)) : 0);
}
