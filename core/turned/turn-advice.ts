import type { Sureness } from '../advice/advice.ts';
import { turnInWords } from '../light/turn-in-words.ts';
import { TURN_WEIGHTS } from '../light/turn-weights.ts';
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
  /** Azimuth that faces the camera now; `null` when no turn is on record: the mark is then supposed to face it. */
  readonly standsAtTurnDeg: number | null;
}

/**
 * Says which side to turn to the light.
 *
 * @param lopsidedness `null` when it could not be fitted
 * @param reach all round, evenly spaced
 * @param light `null` when the light's side is not set
 * @returns advice; `null` when the plant is even within its plus-minus or its middle is not known
 *
 * Notes: the rule and its weights stand in `turn-weights.ts`. No rate is promised; none is published for grown pot plants. A quarter turn a week is growers' practice.
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
      weight: TURN_WEIGHTS.weakSide.awayFromHeavySide * certainty(percent, plusMinus),
    },
    ...leastReach(reach),
  ];
  const weak = circularSummary(
    voices.map((voice) => voice.azimuthDeg),
    voices.map((voice) => voice.weight),
  );
  if (weak.meanDeg === null) return null;
  const toLightAzimuthDeg = Math.round(weak.meanDeg) % 360;
  const turnByDeg =
    light === null
      ? null
      : turnBetween(toLightAzimuthDeg - (light.standsAtTurnDeg ?? 0), light.fromCameraDeg);
  return {
    toLightAzimuthDeg,
    turnByDeg,
    words: turnInWords(turnByDeg, toLightAzimuthDeg),
    why: `The canopy’s middle stands ${percent.toFixed(1)} % of the ball’s radius to ${clockOfAzimuth(azimuthDeg)} o’clock (± ${plusMinus.toFixed(1)}), seen from above with the mark at 6. That is the heavy side, and growth fills the side that faces the light. Growers turn a quarter once a week, some half; none publishes how fast it works.${light?.standsAtTurnDeg === null ? MARK_SUPPOSED : ''}`,
    sure:
      percent > 3 * plusMinus && plusMinusDeg < 30 ? 'sure' : percent > 2 * plusMinus ? 'likely' : 'unsure',
  };
}

const MARK_SUPPOSED =
  ' How far to turn is reckoned with the mark facing the camera, as no turn of the pot is on record.';

/** The azimuth of least reach as a voice, as loud as it is certain; none without reach. */
function leastReach(reach: readonly Reach[]): { azimuthDeg: number; weight: number }[] {
  if (reach.length === 0) return [];
  const least = reach.reduce((one, other) => (other.reach < one.reach ? other : one));
  const mean = reach.reduce((sum, one) => sum + one.reach, 0) / reach.length;
  const weight = TURN_WEIGHTS.weakSide.leastReach * certainty(mean - least.reach, least.plusMinus);
  return weight > 0 ? [{ azimuthDeg: least.azimuthDeg, weight }] : [];
}

function certainty(size: number, plusMinus: number): number {
  return size <= plusMinus ? 0 : 1 - (plusMinus / size) ** 2;
}
