import type { Sureness } from '../advice/advice.ts';
import { addDays, type Day } from '../day/day.ts';
import { circularSummary, turnBetween, wholeTurn } from '../turned/circular-statistics.ts';
import { clockOfAzimuth } from '../turned/clock-of-azimuth.ts';
import type { TurnAdvice } from '../turned/turn-advice.ts';
import type { LightLedger } from './light-ledger.ts';
import { turnInWords } from './turn-in-words.ts';
import { SHARE_OF_SURENESS, TURN_WEIGHTS } from './turn-weights.ts';

/** How the grower turns the pot when nothing else is known. */
export interface TurnRhythm {
  /** `null`: no reminder. */
  readonly everyDays: number | null;
  /** How far each time, degrees: 45, 90, 135 or 180 (turns are told in eighths). */
  readonly byDeg: number;
  /** Seen from above. */
  readonly way: TurnWay;
}

export const TURN_WAYS = ['clockwise', 'anticlockwise'] as const;
export type TurnWay = (typeof TURN_WAYS)[number];

/**
 * A quarter turn a week, always the same way.
 *
 * Reference: a quarter turn a week: Penney, congresburygardening.org.uk, and two more growers; always clockwise, so as to remember:
 * Garden News, 28 July 2020; half a turn a week: one source. Growers' practice, not measured.
 */
export const USUAL_RHYTHM: TurnRhythm = { everyDays: 7, byDeg: 90, way: 'clockwise' };

/** The next turn of the pot. */
export interface NextTurn {
  /** Nothing need be done before; a day in the past is overdue. */
  readonly dueDay: Day;
  /** From how the pot stands, degrees, anticlockwise seen from above; 0: leave it. */
  readonly turnByDeg: number;
  readonly toLightAzimuthDeg: number;
  readonly words: string;
  readonly why: string;
  readonly sure: Sureness;
}

export interface TurnQuestion {
  readonly ledger: LightLedger;
  /** From the last turned sitting; `null` when there is none or the plant is even. */
  readonly weak: Pick<TurnAdvice, 'toLightAzimuthDeg' | 'sure'> | null;
  readonly rhythm: TurnRhythm;
}

/** Voices that agree less than this contradict one another. */
const LEAST_AGREEMENT = 0.5;

/**
 * When to turn the pot next, and how far.
 *
 * @returns `null` while no turn is on record, or when the grower wants no reminder
 *
 * Notes: due by the rhythm only, never sooner. The turn is rounded to eighths. Where the side that should face the light faces it already
 * the pot is left for another round. The rule and its weights stand in `turn-weights.ts`.
 *
 * Example: last turned 7 days ago, nothing known of the plant: a quarter turn clockwise today.
 */
export function nextTurn({ ledger, weak, rhythm }: TurnQuestion): NextTurn | null {
  const { nowFacesDeg, sinceDay, daysSinceTurn } = ledger;
  const { everyDays } = rhythm;
  if (nowFacesDeg === null || sinceDay === null || daysSinceTurn === null || everyDays === null) return null;
  const voices = voicesOf(ledger, weak, rhythm, nowFacesDeg);
  const summary = circularSummary(
    voices.map(({ azimuthDeg }) => azimuthDeg),
    voices.map(({ weight }) => weight),
  );
  const wanted = summary.meanDeg ?? rhythmAzimuth(rhythm, nowFacesDeg);
  // A clockwise turn brings a side further round anticlockwise to the light.
  const turnByDeg = 45 * Math.round(turnBetween(wanted, nowFacesDeg) / 45) || 0;
  const toLightAzimuthDeg = wholeTurn(nowFacesDeg - turnByDeg);
  const rounds = turnByDeg === 0 ? Math.floor(daysSinceTurn / everyDays) + 1 : 1;
  return {
    dueDay: addDays(sinceDay, everyDays * rounds),
    turnByDeg,
    toLightAzimuthDeg,
    words: turnInWords(turnByDeg, toLightAzimuthDeg),
    why: whyOf(ledger, weak, rhythm),
    sure: summary.resultant < LEAST_AGREEMENT ? 'unsure' : (weak?.sure ?? 'likely'),
  };
}

interface Voice {
  readonly azimuthDeg: number;
  readonly weight: number;
}

function voicesOf(
  { gapAzimuthDeg, evenness }: LightLedger,
  weak: TurnQuestion['weak'],
  rhythm: TurnRhythm,
  nowFacesDeg: number,
): Voice[] {
  const weights = TURN_WEIGHTS.nextTurn;
  const voices = [{ azimuthDeg: rhythmAzimuth(rhythm, nowFacesDeg), weight: weights.rhythm as number }];
  if (gapAzimuthDeg !== null && evenness !== null) {
    voices.push({ azimuthDeg: gapAzimuthDeg, weight: weights.leastLight * (1 - evenness) });
  }
  if (weak !== null) {
    voices.push({
      azimuthDeg: weak.toLightAzimuthDeg,
      weight: weights.weakSide * SHARE_OF_SURENESS[weak.sure],
    });
  }
  return voices;
}

function rhythmAzimuth({ byDeg, way }: TurnRhythm, nowFacesDeg: number): number {
  return wholeTurn(nowFacesDeg + (way === 'clockwise' ? byDeg : -byDeg));
}

function whyOf(
  { daysSinceTurn, gapAzimuthDeg, why }: LightLedger,
  weak: TurnQuestion['weak'],
  { everyDays }: TurnRhythm,
): string {
  const since = `Last turned ${daysSinceTurn === 0 ? 'today' : daysSinceTurn === 1 ? 'yesterday' : `${daysSinceTurn} days ago`}; your rhythm is every ${everyDays} days.`;
  const side =
    weak === null ? '' : ` The ${clockOfAzimuth(weak.toLightAzimuthDeg)} o’clock side is the weak one.`;
  const light = gapAzimuthDeg === null ? '' : ` ${why}`;
  return `${since}${side}${light}`;
}
