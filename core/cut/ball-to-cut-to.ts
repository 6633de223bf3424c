import { dayInWords } from '../day/day-in-words.ts';
import { requirePositive } from '../errors/expect.ts';
import type { ExpectedGrowth } from '../growth/expected-growth.ts';
import { RESTS_ON } from '../growth/growth-words.ts';
import { weeksBetween } from '../growth/radius-readings.ts';
import type { StoppedToday } from '../season/stop-today.ts';
import {
  across,
  cutWords,
  LEAST_CUT_MM,
  LEAST_SHARE,
  rangeWords,
  tooHardWords,
  weeksInWords,
} from './ball-words.ts';
import { startRadiusFor } from './cut-back-from-show.ts';
import { TIP_STOP_MOST_MM } from './cut-list.ts';
import { dateEffectWords } from './date-effect.ts';

/** How the ball to cut to is chosen. */
export type WayToCut =
  /** Up to the plant's own ball: only what stands outside comes off. */
  | { readonly kind: 'even-up' }
  /** A width of the grower's own. */
  | { readonly kind: 'width'; readonly widthMm: number }
  /** Back from the show: what grows on until then may be so wide and no wider. */
  | { readonly kind: 'show'; readonly widestMm: number; readonly growth: ExpectedGrowth };

/** The plant as it stands. */
export interface PresentPlant extends StoppedToday {
  /** Radius of the ball fitted without the long stems; `null` without a scale. */
  readonly ballRadiusMm: number | null;
  /** Its 95 % repeatability; `null` where it is not known. */
  readonly plusMinusMm: number | null;
}

export interface BallToCutTo {
  readonly ok: true;
  readonly way: WayToCut['kind'];
  /** About the present ball's centre. Larger than the present ball where nothing needs cutting. */
  readonly radiusMm: number;
  /** Even up: 95 % repeatability. Back from the show: 90 %, how far the growth can be foreseen. `null` for a width, which is what it is. */
  readonly range: readonly [low: number, high: number] | null;
  readonly words: string;
  readonly why: string;
  /** Whether more must come off all round than a tip stop takes. */
  readonly needsDeepStops: boolean;
  /** What cutting all round today does to the date of bloom; `null` where it is not cut all round. */
  readonly dateEffectWords: string | null;
}

export interface NoBallToCutTo {
  readonly ok: false;
  readonly reason: 'no-scale' | 'no-show-day' | 'show-over' | 'out-of-reach';
  readonly hint: string;
}

/**
 * The ball to cut the plant to.
 *
 * @param way even up to the plant's own ball, to a width, or back from the show
 * @param present ball, kind, today and show
 * @returns radius with its range, in words, whether tip stops reach it and what it does to the date; or why there is none
 *
 * Notes: evening up without a scale needs no ball in mm: the cut list then goes by the present ball in the photo.
 *
 * Example: a ball of 140 mm that may be 300 mm wide at the show in 14 weeks and is expected to grow by 58 mm is cut to 92 mm, with deep stops.
 */
export function ballToCutTo(way: WayToCut, present: PresentPlant): BallToCutTo | NoBallToCutTo {
  const { ballRadiusMm } = present;
  if (ballRadiusMm === null) {
    return {
      ok: false,
      reason: 'no-scale',
      hint: 'Give the pot’s rim diameter, so that sizes can be told in mm. Without it the plant can still be evened up to its present ball.',
    };
  }
  requirePositive(ballRadiusMm, 'ballRadiusMm');
  switch (way.kind) {
    case 'even-up':
      return evenUp(ballRadiusMm, present.plusMinusMm);
    case 'width':
      requirePositive(way.widthMm, 'widthMm');
      return toWidth(way.widthMm / 2, ballRadiusMm, present);
    case 'show':
      requirePositive(way.widestMm, 'widestMm');
      return backFromShow(way, ballRadiusMm, present);
  }
}

function evenUp(radiusMm: number, plusMinusMm: number | null): BallToCutTo {
  return {
    ok: true,
    way: 'even-up',
    radiusMm,
    range: plusMinusMm === null ? null : [radiusMm - plusMinusMm, radiusMm + plusMinusMm],
    words: `Even up to its own ball, ${across(radiusMm)} across.`,
    why: 'The ball is the one that the canopy fills without its long stems, so only what stands outside comes off.',
    needsDeepStops: false,
    dateEffectWords: null,
  };
}

function toWidth(radiusMm: number, ballRadiusMm: number, present: PresentPlant): BallToCutTo | NoBallToCutTo {
  if (radiusMm < LEAST_SHARE * ballRadiusMm) {
    return { ok: false, reason: 'out-of-reach', hint: tooHardWords(radiusMm, ballRadiusMm) };
  }
  return {
    ok: true,
    way: 'width',
    radiusMm,
    range: null,
    words: cutWords(radiusMm, ballRadiusMm),
    why: 'The width you chose.',
    ...stopsNeeded(radiusMm, ballRadiusMm, present),
  };
}

function backFromShow(
  { widestMm, growth }: WayToCut & { kind: 'show' },
  ballRadiusMm: number,
  present: PresentPlant,
): BallToCutTo | NoBallToCutTo {
  const { today, showDay } = present;
  if (showDay === null) {
    return {
      ok: false,
      reason: 'no-show-day',
      hint: 'Set the day of the show, so that it can be counted back from.',
    };
  }
  if (showDay < today) {
    return {
      ok: false,
      reason: 'show-over',
      hint: `The show on ${dayInWords(showDay)} is over: set the day of the next one.`,
    };
  }
  const weeks = weeksBetween(today, showDay);
  const { radiusMm, range90Mm, growthMm } = startRadiusFor(widestMm / 2, weeks, growth);
  if (radiusMm < LEAST_SHARE * ballRadiusMm) {
    return {
      ok: false,
      reason: 'out-of-reach',
      hint: `It is expected to grow too much in the ${weeksInWords(weeks)} to the show for ${Math.round(widestMm)} mm. ${tooHardWords(radiusMm, ballRadiusMm)} Stop it again later, or allow it to be wider.`,
    };
  }
  return {
    ok: true,
    way: 'show',
    radiusMm,
    range: range90Mm,
    words: `${cutWords(radiusMm, ballRadiusMm)} ${rangeWords(range90Mm, ballRadiusMm)}`,
    why: `By the show on ${dayInWords(showDay)}, ${weeksInWords(weeks)} from now, the radius is expected to grow by about ${Math.round(growthMm)} mm after a stop, to ${Math.round(widestMm)} mm across. ${RESTS_ON[growth.restsOn]} It is taken to grow by as many mm whichever ball it starts from (common practice, no source).`,
    ...stopsNeeded(radiusMm, ballRadiusMm, present),
  };
}

function stopsNeeded(radiusMm: number, ballRadiusMm: number, present: PresentPlant) {
  const takeOffMm = ballRadiusMm - radiusMm;
  const needsDeepStops = takeOffMm > TIP_STOP_MOST_MM;
  return {
    needsDeepStops,
    dateEffectWords:
      takeOffMm < LEAST_CUT_MM ? null : dateEffectWords(needsDeepStops ? 'deep' : 'tip', present),
  };
}
