import { changeSince } from '../../../core/trend/change-since.ts';
import type { PlanReach, TurnedReport } from '../../../core/turned/measure-turned.ts';
import { sideWords } from '../../../core/turned/place-words.ts';
import { plusMinusWords } from '../measures/reading.ts';
import { BALL } from './plan-shape.ts';

/** "142 mm ±5", or "% of the ball’s radius" without a scale. */
export function reachWords({ mm, plusMinusMm, percent, plusMinusPercent }: PlanReach): string {
  return mm === null
    ? `${percent.toFixed(0)} % ${plusMinusWords(plusMinusPercent)} of the ball’s radius`
    : `${mm.toFixed(0)} mm ${plusMinusWords(plusMinusMm)}`;
}

/** What one side of the plan says when it is tapped. */
export function sideTold(
  one: PlanReach,
  earlier: { readonly reach: PlanReach; readonly day: string } | null,
): string {
  const measured = one.measured
    ? 'A silhouette ends there, so it is measured.'
    : 'No silhouette ends there: it is filled in between measured sides.';
  const since = earlier === null ? '' : ` ${changeWords(one, earlier.reach, earlier.day)}`;
  return `${sideWords(one.azimuthDeg).replace(/^t/, 'T')} reaches ${reachWords(one)}. ${ballWords(one)} ${measured}${since}`;
}

/** Where the reach ends against the ball; inside its plus-minus it fills the ball. */
function ballWords({ mm, percent, plusMinusPercent }: PlanReach): string {
  const off = percent - BALL;
  if (Math.abs(off) <= plusMinusPercent) return 'It fills the ball there, within the plus-minus.';
  const size =
    mm === null || percent <= 0
      ? `${Math.abs(off).toFixed(0)} %`
      : `${((Math.abs(off) * mm) / percent).toFixed(0)} mm`;
  return off < 0 ? `That is ${size} short of the ball.` : `That is ${size} beyond the ball.`;
}

function changeWords(now: PlanReach, before: PlanReach, day: string): string {
  const bySize = now.mm !== null && before.mm !== null;
  const reading = (one: PlanReach) =>
    bySize
      ? { value: one.mm ?? 0, plusMinus: one.plusMinusMm ?? 0 }
      : { value: one.percent, plusMinus: one.plusMinusPercent };
  const { by, direction } = changeSince(reading(before), reading(now));
  if (direction === 'none') return `No change since ${day}.`;
  const size = `${Math.abs(by).toFixed(0)} ${bySize ? 'mm' : '% of the ball’s radius'}`;
  return `Since ${day}: ${size} ${by > 0 ? 'more' : 'less'}.`;
}

/** The whole plan in a few sentences, for whoever hears the drawing. */
export function planHeard({ plan }: TurnedReport): string {
  const { reach, lopsidedness } = plan;
  const lean =
    lopsidedness === null
      ? 'Where the canopy leans is not known.'
      : lopsidedness.even
        ? 'The canopy is even within its plus-minus.'
        : `The canopy leans ${lopsidedness.percent.toFixed(1)} % of the ball’s radius to ${sideWords(lopsidedness.azimuthDeg)}.`;
  const [first] = reach;
  if (first === undefined) return `There is no reach all round. ${lean}`;
  const by = (better: (one: PlanReach, best: PlanReach) => boolean) =>
    reach.reduce((best, one) => (better(one, best) ? one : best), first);
  const most = by((one, best) => one.percent > best.percent);
  const least = by((one, best) => one.percent < best.percent);
  return `The plan seen from above, the mark at 6 o’clock. Most reach: ${sideWords(most.azimuthDeg)}, ${reachWords(most)}. Least: ${sideWords(least.azimuthDeg)}, ${reachWords(least)}. ${lean}`;
}
