import { turnBetween } from '../../../core/turned/circular-statistics.ts';

/**
 * The turns offered on buttons, degrees clockwise.
 *
 * @param advisedDeg anticlockwise as core gives it; `null` without advice, 0 to leave the pot
 */
export function stepsToOffer(advisedDeg: number | null, rhythmDeg: number): number[] {
  const advised = advisedDeg === null || advisedDeg === 0 ? null : -advisedDeg;
  if (advised === null || Math.abs(turnBetween(advised, rhythmDeg)) < 1) return [rhythmDeg];
  return [advised, rhythmDeg];
}
