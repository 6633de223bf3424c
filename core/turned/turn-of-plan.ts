import type { TurnedReport } from './measure-turned.ts';
import { adviseTurn, type LightPlace, type TurnAdvice } from './turn-advice.ts';

/**
 * Which side of a measured plan to turn to the light, as the pot stands now: a plan outlives the pot's place.
 *
 * @param light `null` when the light's side is not known
 * @returns advice; `null` when the plant is even within its plus-minus or its middle is not known
 */
export function turnOfPlan(
  { lopsidedness, reach }: TurnedReport['plan'],
  light: LightPlace | null,
): TurnAdvice | null {
  const shares = reach.map(({ azimuthDeg, percent, plusMinusPercent, measured }) => ({
    azimuthDeg,
    reach: percent,
    plusMinus: plusMinusPercent,
    measured,
  }));
  return adviseTurn(lopsidedness, shares, light);
}
