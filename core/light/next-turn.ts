import type { Sureness } from '../advice/advice.ts';
import { addDays, type Day } from '../day/day.ts';
import { radOf, turnBetween, wholeTurn } from '../turned/circular-statistics.ts';
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

/** Share of all that was said that the chosen side has for it. */
const AGREED = { well: 0.6, somewhat: 0.25 };
/** A plant whose weak side faces the light is left for this many rounds in all. */
const MOST_ROUNDS = 2;

/**
 * When to turn the pot next, and how far.
 *
 * @returns `null` while no turn is on record, or when the grower wants no reminder
 *
 * Notes: due by the rhythm only, never sooner. Turns are quarters, or eighths where the rhythm is in eighths. Where the side that should
 * face the light faces it already the pot is left for one more round. The rule and its weights stand in `turn-weights.ts`.
 *
 * Example: last turned 7 days ago, nothing known of the plant: a quarter turn clockwise today.
 */
export function nextTurn({ ledger, weak, rhythm }: TurnQuestion): NextTurn | null {
  const { nowFacesDeg, sinceDay, daysSinceTurn } = ledger;
  const { everyDays } = rhythm;
  if (nowFacesDeg === null || sinceDay === null || daysSinceTurn === null || everyDays === null) return null;
  const voices = voicesOf(ledger, weak, rhythm, nowFacesDeg);
  const mayStay = daysSinceTurn < MOST_ROUNDS * everyDays;
  const { azimuthDeg, agreement } = bestSide(sidesFrom(nowFacesDeg, rhythm, mayStay), voices);
  // A clockwise turn brings a side further round anticlockwise to the light.
  const turnByDeg = turnBetween(azimuthDeg, nowFacesDeg) || 0;
  return {
    dueDay: addDays(sinceDay, everyDays * (turnByDeg === 0 ? MOST_ROUNDS : 1)),
    turnByDeg,
    toLightAzimuthDeg: azimuthDeg,
    words: turnInWords(turnByDeg, azimuthDeg),
    why: whyOf(ledger, weak, rhythm),
    sure: surenessOf(agreement, weak?.sure ?? 'likely'),
  };
}

/** Sides that can be turned to, the rhythm's own first: of two alike the first is taken. */
function sidesFrom(nowFacesDeg: number, { byDeg, way }: TurnRhythm, mayStay: boolean): number[] {
  const step = byDeg % 90 === 0 ? 90 : 45;
  const sides = Array.from({ length: 360 / step }, (_, k) => byDeg + k * step);
  return sides
    .filter((deg) => mayStay || deg % 360 !== 0)
    .map((deg) => wholeTurn(nowFacesDeg + (way === 'clockwise' ? deg : -deg)));
}

/** The side that the voices point to on the whole. */
function bestSide(
  sides: readonly number[],
  voices: readonly Voice[],
): { azimuthDeg: number; agreement: number } {
  const total = voices.reduce((sum, { weight }) => sum + weight, 0);
  let best = { azimuthDeg: Number.NaN, agreement: Number.NEGATIVE_INFINITY };
  for (const azimuthDeg of sides) {
    const said = voices.reduce(
      (sum, voice) => sum + voice.weight * Math.cos(radOf(turnBetween(voice.azimuthDeg, azimuthDeg))),
      0,
    );
    if (said / total > best.agreement + 1e-9) best = { azimuthDeg, agreement: said / total };
  }
  return best;
}

function surenessOf(agreement: number, most: Sureness): Sureness {
  if (agreement < AGREED.somewhat) return 'unsure';
  return agreement < AGREED.well && most === 'sure' ? 'likely' : most;
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
