import { TIP_STOP_MOST_MM } from './cut-list.ts';

/** Less than this is no cut: nobody cuts finer on a living plant. */
export const LEAST_CUT_MM = 5;
/**
 * The hardest cut that is advised, as a share of the present ball: two thirds off is the hardest figure found (species pelargoniums, Gardens
 * Illustrated, 14 September 2017; low confidence).
 */
export const LEAST_SHARE = 1 / 3;

/** What comes off all round, and by which stops. */
export function cutWords(radiusMm: number, ballRadiusMm: number): string {
  const takeOffMm = ballRadiusMm - radiusMm;
  if (takeOffMm < LEAST_CUT_MM) {
    return `It may be ${across(radiusMm)} across and its ball is ${across(ballRadiusMm)}: for the width nothing need come off.`;
  }
  const depth =
    takeOffMm > TIP_STOP_MOST_MM
      ? `more than a tip stop takes (${TIP_STOP_MOST_MM} mm), so it needs deeper stops`
      : 'which tip stops reach';
  return `Cut to a ball ${across(radiusMm)} across: about ${Math.round(takeOffMm)} mm off all round, ${depth}.`;
}

/** How sure the ball is that was counted back from the show. */
export function rangeWords([low, high]: readonly [number, number], ballRadiusMm: number): string {
  return low < LEAST_SHARE * ballRadiusMm
    ? `The growth cannot be foreseen well: up to ${across(high)} may be right, and if it grows fast no cut is hard enough.`
    : `Between ${across(low)} and ${across(high)} may be right; if it must on no account be too wide, keep to the lower.`;
}

/** Why a ball is not advised. */
export function tooHardWords(radiusMm: number, ballRadiusMm: number): string {
  return `That would mean ${radiusMm <= 0 ? 'nothing left of' : `a ball ${across(radiusMm)} across from`} a plant of ${across(ballRadiusMm)}: more than two thirds off, which a plant may not outlive.`;
}

/** A ball as a grower measures it. */
export function across(radiusMm: number): string {
  return `${Math.round(2 * radiusMm)} mm`;
}

export function weeksInWords(weeks: number): string {
  const whole = Math.round(weeks);
  return whole === 1 ? '1 week' : `${whole} weeks`;
}
