import { dayInWords } from '../day/day-in-words.ts';
import type { Lopsidedness, PhotoReport } from '../report.ts';
import { changeSince } from '../trend/change-since.ts';
import type { Advice } from './advice.ts';
import { newestComparable, type PlantHistory, reportBefore } from './plant-history.ts';

/**
 * Which side to turn to the light: the weak one, which is the side away from where the canopy leans.
 *
 * @returns advice from the view that leans most, when it leans by more than its plus-minus; else `null`
 *
 * Notes: one photo knows left from right only. A photo from elsewhere shows another side and is not asked. No rate is promised: none is published for grown pot plants.
 *
 * Reference: a quarter turn a week: Penney, congresburygardening.org.uk, and two more growers; half a turn: one source.
 */
export function turnToLight(history: PlantHistory): Advice | null {
  const newest = newestComparable(history);
  const leaning = newest?.reports.filter(({ lopsidedness }) => leans(lopsidedness)) ?? [];
  const report = leaning.sort((a, b) => leanOf(b) - leanOf(a))[0];
  if (!report?.lopsidedness) return null;
  const { percent, plusMinus, side } = report.lopsidedness;
  const weak = side === 'left' ? 'right' : 'left';
  return {
    kind: 'turn',
    urgency: Math.abs(percent) > 3 * plusMinus ? 2 : 1,
    what: `Turn its ${weak} side to the light.`,
    where: whereIsWeak(report, weak),
    howMuch: `The canopy’s middle stands ${Math.abs(percent).toFixed(1)} % of the ball’s radius to the ${side} (± ${plusMinus.toFixed(1)}).${changeInWords(history, report)}`,
    why: `The ${side} side is the heavier, and growth fills the side that faces the light. Growers turn a quarter once a week, some half; none publishes how fast it works.`,
    sureness: Math.abs(percent) > 2 * plusMinus ? 'likely' : 'unsure',
    caution: null,
  };
}

function leans(lopsidedness: Lopsidedness | null): boolean {
  return lopsidedness !== null && Math.abs(lopsidedness.percent) > lopsidedness.plusMinus;
}

function leanOf({ lopsidedness }: PhotoReport): number {
  return Math.abs(lopsidedness?.percent ?? 0);
}

function whereIsWeak({ turnDeg }: PhotoReport, weak: 'left' | 'right'): string {
  const oneView = 'One photo tells left from right only; front and back need a photo after a quarter turn.';
  if (turnDeg === null) return `The side that is on the ${weak} in the photo. ${oneView}`;
  // Azimuth runs anticlockwise from above, so the camera's right is a quarter turn on from what faces it.
  const azimuth = turnDeg + (weak === 'right' ? 90 : -90);
  return `The side on the ${weak} in the photo, at ${clockOfAzimuth(azimuth)} o’clock seen from above with the mark at 6. ${oneView}`;
}

/** Azimuth 0 is the mark at 6 o'clock, 90 is 3, 180 is 12, 270 is 9. */
function clockOfAzimuth(azimuthDeg: number): number {
  const hour = Math.round(6 - azimuthDeg / 30);
  return ((((hour - 1) % 12) + 12) % 12) + 1;
}

function changeInWords(history: PlantHistory, report: PhotoReport): string {
  const before = reportBefore(history, report);
  if (!before?.report.lopsidedness || !report.lopsidedness) return '';
  const { percent, plusMinus } = before.report.lopsidedness;
  const change = changeSince(
    { value: percent, plusMinus },
    { value: report.lopsidedness.percent, plusMinus: report.lopsidedness.plusMinus },
  );
  if (change.direction === 'none') return ` No change since ${dayInWords(before.day)}.`;
  const way = change.direction === 'up' ? 'right' : 'left';
  return ` Since ${dayInWords(before.day)} it has moved ${Math.abs(change.by).toFixed(1)} % to the ${way}.`;
}
