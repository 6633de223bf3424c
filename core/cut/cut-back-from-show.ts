import type { ExpectedGrowth, LogBell } from '../growth/expected-growth.ts';
import { CURVE_KINDS, radiusAt } from '../growth/growth-curve.ts';
import { normalPoint } from '../trend/normal-tail.ts';

/** The ball to cut to so that the plant has the wanted size later, mm. */
export interface StartRadius {
  /** As likely too large as too small. */
  readonly radiusMm: number;
  /** 90 %. */
  readonly range90Mm: readonly [low: number, high: number];
  /** How much the radius grows until then from that ball, median. */
  readonly growthMm: number;
}

/** Growths tried: so many equally likely amounts, so many equally likely paces, either kind of curve. */
const AMOUNTS = 60;
const PACES = 15;
const HALVINGS = 30;

/**
 * Ball to cut to now for a wanted ball in some weeks, by the growth expected after a stop.
 *
 * @param wantedRadiusMm above 0
 * @param weeks until then, 0 or more
 * @param expected how much and how fast it grows after a stop
 * @returns median and 90 % range of the ball to cut to; 0 where even nothing left over would grow too large
 *
 * How: for each growth that is expected the curve is followed back from the wanted radius. Growth in mm counts as the same whichever ball it
 * starts from, because a stop lets every shoot make its next joints and a joint is as long on a small ball as on a large one.
 *
 * Notes: that assumption is common practice, no source; the two kinds of curve count alike.
 *
 * Example: 150 mm wanted in 14 weeks and a growth of 58 mm until then give 92 mm.
 */
export function startRadiusFor(wantedRadiusMm: number, weeks: number, expected: ExpectedGrowth): StartRadius {
  const amounts = equallyLikely(AMOUNTS, expected.logGrowthMm);
  const paces = equallyLikely(PACES, expected.logWeeksToHalf);
  const starts = CURVE_KINDS.flatMap((kind) =>
    amounts.flatMap((growthMm) =>
      paces.map((weeksToHalf) => {
        const later = (startRadiusMm: number) =>
          radiusAt({ kind, startRadiusMm, finalRadiusMm: startRadiusMm + growthMm, weeksToHalf }, weeks);
        return startThatReaches(wantedRadiusMm, later);
      }),
    ),
  ).sort((a, b) => a - b);
  const [low, radiusMm, high] = [0.05, 0.5, 0.95].map((share) => belowWhich(starts, share)) as [
    number,
    number,
    number,
  ];
  return { radiusMm, range90Mm: [low, high], growthMm: wantedRadiusMm - radiusMm };
}

/** The value below which the given share of sorted values lies, each taken as the middle of its part. */
function belowWhich(sorted: readonly number[], share: number): number {
  const place = share * sorted.length - 0.5;
  const index = Math.floor(place);
  const [below, above] = [sorted[index] as number, sorted[index + 1] as number];
  return below + (place - index) * (above - below);
}

/** The start, between nothing and the wanted radius, from which it is reached. */
function startThatReaches(wantedRadiusMm: number, later: (startRadiusMm: number) => number): number {
  let [low, high] = [0, wantedRadiusMm];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    if (later(middle) > wantedRadiusMm) high = middle;
    else low = middle;
  }
  return low;
}

/** Values of a logarithm's bell curve each in the middle of one of so many equally likely parts. */
function equallyLikely(count: number, { mean, sd }: LogBell): number[] {
  return Array.from({ length: count }, (_, k) => {
    const below = (k + 0.5) / count;
    const z = below <= 0.5 ? -normalPoint(below) : normalPoint(1 - below);
    return Math.exp(mean + sd * z);
  });
}
