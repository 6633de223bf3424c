import type { Sureness } from '../advice/advice.ts';
import { circularSummary, turnBetween, wholeTurn } from './circular-statistics.ts';
import { clockOfAzimuth } from './clock-of-azimuth.ts';
import type { LopsidednessVector } from './lopsidedness-vector.ts';
import type { Reach } from './reach.ts';

/** Which side to turn to the light. */
export interface TurnAdvice {
  /** The weak side, which should face the light, degrees. */
  readonly toLightAzimuthDeg: number;
  /** How far to turn the pot from how it stands, degrees, anticlockwise seen from above; `null` when the light's side is not known. */
  readonly turnByDeg: number | null;
  readonly words: string;
  readonly why: string;
  readonly sure: Sureness;
}

/** Where the light stands and how the pot stands. */
export interface LightPlace {
  /** The light as seen from the pot, anticlockwise from the camera seen from above: 0 camera, 90 camera's right, 180 behind the plant. */
  readonly fromCameraDeg: number;
  /** Azimuth that faces the camera when the pot stands in its usual place. */
  readonly standsAtTurnDeg: number;
}

/**
 * The rule and its weights, all in one place.
 *
 * The weak side is the one away from the heavy side (where the canopy's middle stands off the axis) and the one with the least reach. Both
 * point somewhere; the advice is their weighted mean direction. The middle counts most, because it rests on the whole outline; reach
 * rests on its outermost leaf. Each weight is multiplied by how certain its voice is: 1 − (plus-minus ÷ size)², at least 0.
 */
export const TURN_WEIGHTS = { awayFromHeavySide: 0.75, leastReach: 0.25 } as const;

/** A turn smaller than this is not worth moving a pot for, degrees. */
const LEAST_TURN_DEG = 22.5;

/**
 * Says which side to turn to the light.
 *
 * @param lopsidedness `null` when it could not be fitted
 * @param reach all round, evenly spaced
 * @param light `null` when the light's side is not set
 * @returns advice; `null` when the plant is even within its plus-minus or its middle is not known
 *
 * Notes: no rate is promised; none is published for grown pot plants. A quarter turn a week is growers' practice.
 */
export function adviseTurn(
  lopsidedness: LopsidednessVector | null,
  reach: readonly Reach[],
  light: LightPlace | null,
): TurnAdvice | null {
  if (lopsidedness === null || lopsidedness.even) return null;
  const { percent, azimuthDeg, plusMinus, plusMinusDeg } = lopsidedness;
  const voices = [
    {
      azimuthDeg: wholeTurn(azimuthDeg + 180),
      weight: TURN_WEIGHTS.awayFromHeavySide * certainty(percent, plusMinus),
    },
    ...leastReach(reach),
  ];
  const weak = circularSummary(
    voices.map((voice) => voice.azimuthDeg),
    voices.map((voice) => voice.weight),
  );
  if (weak.meanDeg === null) return null;
  const toLightAzimuthDeg = Math.round(weak.meanDeg) % 360;
  const side = `the ${clockOfAzimuth(toLightAzimuthDeg)} o’clock side`;
  const turnByDeg =
    light === null ? null : turnBetween(toLightAzimuthDeg - light.standsAtTurnDeg, light.fromCameraDeg);
  return {
    toLightAzimuthDeg,
    turnByDeg,
    words: turnInWords(turnByDeg, side),
    why: `The canopy’s middle stands ${percent.toFixed(1)} % of the ball’s radius to ${clockOfAzimuth(azimuthDeg)} o’clock (± ${plusMinus.toFixed(1)}), seen from above with the mark at 6. That is the heavy side, and growth fills the side that faces the light. Growers turn a quarter once a week, some half; none publishes how fast it works.`,
    sure:
      percent > 3 * plusMinus && plusMinusDeg < 30 ? 'sure' : percent > 2 * plusMinus ? 'likely' : 'unsure',
  };
}

/** "A quarter turn clockwise: bring the 9 o'clock side to the light." */
function turnInWords(turnByDeg: number | null, side: string): string {
  if (turnByDeg === null) return `Bring ${side} to the light.`;
  const by = Math.abs(turnByDeg);
  if (by < LEAST_TURN_DEG) return `Leave it as it stands: ${side} already faces the light.`;
  const eighths = Math.round(by / 45);
  if (eighths === 4) return `Half a turn: bring ${side} to the light.`;
  const amount = ['', 'An eighth of a turn', 'A quarter turn', 'Three eighths of a turn'][eighths] as string;
  return `${amount} ${turnByDeg > 0 ? 'anticlockwise' : 'clockwise'}: bring ${side} to the light.`;
}

/** The azimuth of least reach as a voice, as loud as it is certain; none without reach. */
function leastReach(reach: readonly Reach[]): { azimuthDeg: number; weight: number }[] {
  if (reach.length === 0) return [];
  const least = reach.reduce((one, other) => (other.reach < one.reach ? other : one));
  const mean = reach.reduce((sum, one) => sum + one.reach, 0) / reach.length;
  const weight = TURN_WEIGHTS.leastReach * certainty(mean - least.reach, least.plusMinus);
  return weight > 0 ? [{ azimuthDeg: least.azimuthDeg, weight }] : [];
}

function certainty(size: number, plusMinus: number): number {
  return size <= plusMinus ? 0 : 1 - (plusMinus / size) ** 2;
}
