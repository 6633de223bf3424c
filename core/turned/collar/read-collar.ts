import type { PointPx, Raster } from '../../raster/raster.ts';
import { wholeTurn } from '../circular-statistics.ts';
import { type BandColumns, bandColumns } from './band-columns.ts';
import { seenEdges } from './code-edges.ts';
import { findBands } from './find-bands.ts';
import { type FittedTurn, fitTurn, type StripPlace, WIDEST_DEG } from './fit-turn.ts';
import { type ColumnReading, countSteps, evenReading, type StepCount } from './judge-steps.ts';
import { type MatchedBand, matchBand, readBand, settleBand } from './match-band.ts';
import { bestTurn, type Lie, nextBest } from './match-code.ts';
import { type PotSight, USUAL_NEARNESS } from './pot-sight.ts';

/** A turn collar that was read. */
export interface CollarReading {
  readonly ok: true;
  /** Azimuth that faces the camera, 0 up to 360°. */
  readonly turnDeg: number;
  /** 95 % of readings lie within it: the edges seen, the rim as found, the strip's length against its pot. Not how straight it was put to the mark. */
  readonly plusMinusDeg: number;
  /** Steps of the code that were read. */
  readonly marksRead: number;
  /** Share of them that are as printed. */
  readonly agreement: number;
}

/** No collar, or one that cannot be read; then `hint` says what to do. */
export interface NoCollar {
  readonly ok: false;
  readonly reason: 'none' | 'unclear' | 'upside-down' | 'mirrored';
  readonly hint: string | null;
}

/** The pot's rim in the photo, px of the raster. */
export interface RimInPhoto {
  readonly centrePx: PointPx;
  readonly halfWidthPx: number;
}

export interface CollarOptions {
  /** Radius of the rim ÷ distance of the camera; what is usual when left out. */
  readonly nearness?: number;
}

/** The part of the photo that is looked at, from the rim's middle ÷ half its width. */
const LOOKED_AT = { aside: 1, above: 0.4, below: 1.7 };
/** Where the middle of the strip's front may be, from the rim's middle ÷ half its width; and how far it may rise to its ends. */
const FRONT = { from: -0.1, to: 1.2 };
const RISES = Array.from({ length: 11 }, (_, k) => -0.08 + 0.07 * k);
/** Where the axis may be to begin with, from where it was found ÷ radius. */
const STARTS = [-0.05, -0.025, 0, 0.025, 0.05];
/** Between two clearly read columns at an edge, ÷ radius. */
const WIDEST_EDGE = 0.09;

/** What a reading must show, and what it may show. Leaves, soil and shadows come near it in single points, never in all. */
const LEAST = { right: 9, edges: 5, difference: 0.4 };
const MOST = { wrongShare: 0.13, stray: 2.5, plusMinusDeg: 8 };
/** An even strip needs little more; where shadows fall on it the code must stand out the more. */
const EVEN = { right: 9, margin: 2.5, unevenness: 0.27, flicker: 0.22 };
const SHADED = { right: 14, margin: 6, unevenness: 0.23, flicker: 0.45 };
/** What says that a collar is there though it cannot be read. */
const SURELY = { look: { right: 10, margin: 1.5, unevenness: 0.18, flicker: 0.15 }, difference: 0.55 };

const NORMAL_95 = 1.96;
const NONE: NoCollar = { ok: false, reason: 'none', hint: null };

/**
 * Reads the turn collar on a pot.
 *
 * @param raster upright photo
 * @param rim as found, good to a tenth of its width
 * @returns the turn; or why there is none: never a turn that is not sure
 *
 * Notes: unrolls the front of the pot under a pinhole camera, looks for the band whose two rows differ now one way now the other, fits the code at
 * every turn (also upside down and mirrored, so that these are told and not misread), then fits turn, axis and radius to the edges between steps.
 * Leaves over a part of it cost accuracy; nine steps and five edges must be seen. The mean error of drawn and rendered pots is told by
 * `tests/core/turned/collar/figures.ts`.
 *
 * Example: a pot whose 3 o'clock side faces the camera reads 90°.
 */
export function readCollar(
  raster: Raster,
  rim: RimInPhoto,
  { nearness = USUAL_NEARNESS }: CollarOptions = {},
): CollarReading | NoCollar {
  const half = rim.halfWidthPx;
  const [x, y] = rim.centrePx;
  const columns = bandColumns(raster, {
    left: x - LOOKED_AT.aside * half,
    right: x + LOOKED_AT.aside * half,
    top: y - LOOKED_AT.above * half,
    bottom: y + LOOKED_AT.below * half,
  });
  if (columns === null) return NONE;
  const sight: PotSight = { axisXPx: x, radiusPx: half * Math.sqrt(1 - nearness ** 2), nearness };
  const search = { fromYPx: y + FRONT.from * half, toYPx: y + FRONT.to * half, rises: RISES };
  const answers = findBands(columns, sight, search)
    .map(({ place }) => matchBand(columns, sight, place))
    .sort((one, other) => other.agree - one.agree)
    .map((band) => readMatched(columns, sight, band));
  return answers.find(({ ok }) => ok) ?? answers.find((answer) => answer !== NONE) ?? NONE;
}

function readMatched(columns: BandColumns, expected: PotSight, band: MatchedBand): CollarReading | NoCollar {
  if (band.lie !== 'upright') return wrongLie(band.lie, band);
  const place = settleBand(columns, band);
  const { reading, usual } = readBand(columns, band.strip.sight, place);
  const { axisXPx, radiusPx } = band.strip.sight;
  const edges = seenEdges(reading.xPx, reading.values, (at) => {
    const aside = (at - axisXPx) / radiusPx;
    return WIDEST_EDGE * radiusPx * Math.sqrt(Math.max(0.05, 1 - aside * aside));
  });
  const fits = startsFor(reading, band.strip, expected).flatMap(
    (start) => fitTurn(edges, start, expected) ?? [],
  );
  if (fits.length === 0) return NONE;
  const fit = fits.reduce((best, one) => (one.cost < best.cost ? one : best));
  const steps = countSteps(reading, fit, WIDEST_DEG);
  const even = evenReading(reading, fit, WIDEST_DEG);
  const margin = bestTurn(even, 'upright').agree - nextBest(even, fit.turnDeg);
  return judged(fit, steps, margin, usual);
}

/** Places to begin the fit from: as matched, and with the axis further left and right, each with the turn that fits there. */
function startsFor(reading: ColumnReading, strip: StripPlace, expected: PotSight): StripPlace[] {
  const others = STARTS.map((aside): StripPlace => {
    const sight = { ...strip.sight, axisXPx: expected.axisXPx + aside * expected.radiusPx };
    const place = { ...strip, sight };
    const { turnDeg } = bestTurn(evenReading(reading, place, WIDEST_DEG), 'upright');
    return { ...place, turnDeg };
  });
  return [strip, ...others];
}

function judged(fit: FittedTurn, steps: StepCount, margin: number, usual: number): CollarReading | NoCollar {
  const { right, wrong } = steps;
  const plusMinusDeg = NORMAL_95 * fit.turnDoubtDeg;
  const reads =
    right >= LEAST.right &&
    wrong <= MOST.wrongShare * right &&
    (looks(EVEN, steps, margin) || looks(SHADED, steps, margin)) &&
    usual >= LEAST.difference &&
    fit.edges >= LEAST.edges &&
    fit.stray <= MOST.stray &&
    plusMinusDeg <= MOST.plusMinusDeg;
  if (reads) {
    return {
      ok: true,
      turnDeg: wholeTurn(fit.turnDeg),
      plusMinusDeg,
      marksRead: right + wrong,
      agreement: right / (right + wrong),
    };
  }
  return usual >= SURELY.difference && looks(SURELY.look, steps, margin) ? UNCLEAR : NONE;
}

function looks(look: typeof EVEN, { right, unevenness, flicker }: StepCount, margin: number): boolean {
  return (
    right >= look.right && margin >= look.margin && unevenness <= look.unevenness && flicker <= look.flicker
  );
}

const UNCLEAR: NoCollar = {
  ok: false,
  reason: 'unclear',
  hint: 'A turn collar is there but too little of it can be read for sure. Lift the leaves that hang over it, or set the turn by hand.',
};

/** Steps that must agree, and by how many more than upright, before it is said that the strip lies wrong. */
const LEAST_TO_BLAME = { agree: 13, lead: 4 };

function wrongLie(lie: Exclude<Lie, 'upright'>, { agree, lead }: MatchedBand): NoCollar {
  if (agree < LEAST_TO_BLAME.agree || lead < LEAST_TO_BLAME.lead) return NONE;
  return lie === 'upside-down'
    ? {
        ok: false,
        reason: 'upside-down',
        hint: 'The turn collar is on upside down. Put it on with the hours at the bottom, or set the turn by hand.',
      }
    : {
        ok: false,
        reason: 'mirrored',
        hint: 'The turn collar reads as in a mirror. Switch the camera’s mirroring off and photograph again, or set the turn by hand.',
      };
}
