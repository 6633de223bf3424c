import type { PointPair } from '../../opencv/corners.ts';
import type { PointPx } from '../../raster/raster.ts';
import { leastSquaresSimilarity, type Similarity, zoomOf } from './similarity.ts';

/** A similarity that most pairs agree on. */
export interface RobustFit {
  readonly move: Similarity;
  /** Pairs that agree, and those among them with their weight. */
  readonly agreed: readonly PointPair[];
  /** Standard deviation of one coordinate of an agreed pair, px. */
  readonly spreadPx: number;
}

/** Pairs that make the hypotheses: every two of them. */
const HYPOTHESIS_PAIRS = 80;
/** Two places nearer than this share of the widest spread fix no turn. */
const LEAST_APART_SHARE = 0.15;
/** Zooms beyond this are no photo of the same stand. */
const MOST_ZOOM = 2;
const REWEIGHTINGS = 12;
/** Tukey's biweight: efficiency 95 % on normal errors. */
const TUKEY = 4.685;
/** A spread below this is taken for it: no corner is followed better, px. */
const LEAST_SPREAD_PX = 0.05;

/**
 * The similarity that the most pairs agree on, then its robust least-squares fit.
 *
 * @param pairs places in px, the surest first; any share of them may be wrong
 * @param withinPx how far a pair may be off to agree with a hypothesis
 * @returns `null` when fewer than four pairs agree on anything
 *
 * How: every two of the first 80 pairs make a hypothesis; the one with the most agreeing pairs
 * starts an iteratively reweighted fit with Tukey's biweight.
 *
 * Notes: all hypotheses are tried in order, so nothing is drawn by chance.
 *
 * Reference: Fischler, Bolles (1981), Random sample consensus; Beaton, Tukey (1974) for the weights.
 */
export function robustSimilarity(pairs: readonly PointPair[], withinPx: number): RobustFit | null {
  const start = mostAgreed(pairs, withinPx);
  return start === null ? null : reweighted(pairs, start, withinPx);
}

/** The robust least-squares fit alone, from a move that is nearly right. */
export function reweighted(
  pairs: readonly PointPair[],
  start: Similarity,
  withinPx: number,
): RobustFit | null {
  let move = start;
  let near = pairs.filter((pair) => missPx(move, pair) <= withinPx);
  let spreadPx = withinPx;
  for (let round = 0; round < REWEIGHTINGS; round++) {
    const misses = near.map((pair) => missPx(move, pair));
    // The miss is two coordinates together: its median is 1.1774 standard deviations of one.
    spreadPx = Math.max(LEAST_SPREAD_PX, median(misses) / 1.1774);
    const reach = TUKEY * spreadPx;
    const weighted = near.map(({ from, to }, at) => {
      const share = (misses[at] as number) / reach;
      return { from, to, weight: share < 1 ? (1 - share * share) ** 2 : 0 };
    });
    const next = leastSquaresSimilarity(weighted);
    if (next === null) return null;
    move = next;
    // Never further than at first: leaves that grew all one way would draw the fit along.
    near = pairs.filter((pair) => missPx(move, pair) <= withinPx);
  }
  const agreed = near.filter((pair) => missPx(move, pair) <= 3 * spreadPx);
  return agreed.length < 4 ? null : { move, agreed, spreadPx };
}

/** How far a pair is off, px. Written out, because it is asked a million times. */
export function missPx({ a, b, shiftX, shiftY }: Similarity, { from, to }: PointPair): number {
  const x = a * from[0] - b * from[1] + shiftX - to[0];
  const y = b * from[0] + a * from[1] + shiftY - to[1];
  return Math.sqrt(x * x + y * y);
}

function mostAgreed(pairs: readonly PointPair[], withinPx: number): Similarity | null {
  const chosen = pairs.slice(0, HYPOTHESIS_PAIRS);
  const leastApart = LEAST_APART_SHARE * widestSpread(pairs.map(({ from }) => from));
  let [best, most] = [null as Similarity | null, 3];
  for (const [at, one] of chosen.entries()) {
    for (const other of chosen.slice(at + 1)) {
      if (Math.hypot(one.from[0] - other.from[0], one.from[1] - other.from[1]) < leastApart) continue;
      const move = throughTwo(one, other);
      const zoom = zoomOf(move);
      if (!(zoom <= MOST_ZOOM && zoom >= 1 / MOST_ZOOM)) continue;
      let count = 0;
      for (const pair of pairs) if (missPx(move, pair) <= withinPx) count++;
      if (count > most) [best, most] = [move, count];
    }
  }
  return best;
}

/** The one similarity that brings both pairs home. */
function throughTwo(one: PointPair, other: PointPair): Similarity {
  const [x, y] = [other.from[0] - one.from[0], other.from[1] - one.from[1]];
  const [u, v] = [other.to[0] - one.to[0], other.to[1] - one.to[1]];
  const square = x * x + y * y;
  const [a, b] = [(x * u + y * v) / square, (x * v - y * u) / square];
  return {
    a,
    b,
    shiftX: one.to[0] - a * one.from[0] + b * one.from[1],
    shiftY: one.to[1] - b * one.from[0] - a * one.from[1],
  };
}

function widestSpread(points: readonly PointPx[]): number {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return Math.hypot(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}

function median(values: readonly number[]): number {
  const sorted = Float64Array.from(values).sort();
  return sorted[sorted.length >> 1] ?? 0;
}
