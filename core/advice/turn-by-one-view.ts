import { dayInWords } from '../day/day-in-words.ts';
import { LEAST_TURN_DEG, turnOfSideInWords } from '../light/turn-in-words.ts';
import type { Lopsidedness, PhotoReport } from '../report.ts';
import { changeSince } from '../trend/change-since.ts';
import { turnBetween, wholeTurn } from '../turned/circular-statistics.ts';
import { clockOfAzimuth } from '../turned/clock-of-azimuth.ts';
import type { TurnAdvice } from '../turned/turn-advice.ts';
import type { Advice } from './advice.ts';
import { newestComparable, type PlantHistory, type PlantLighting, reportBefore } from './plant-history.ts';

/** A view that leans to one side, and the other side, which is the weak one. */
interface LeaningView {
  readonly report: PhotoReport;
  readonly lopsidedness: Lopsidedness;
  readonly weak: 'left' | 'right';
}

/** The view of the newest sitting that leans most, when it leans by more than its plus-minus. */
function leaningView(history: PlantHistory): LeaningView | null {
  const newest = newestComparable(history);
  const leaning = newest?.reports.filter(({ lopsidedness }) => leans(lopsidedness)) ?? [];
  const report = leaning.sort((a, b) => leanOf(b) - leanOf(a))[0];
  if (!report?.lopsidedness) return null;
  const { lopsidedness } = report;
  return { report, lopsidedness, weak: lopsidedness.side === 'left' ? 'right' : 'left' };
}

/** Azimuth from what faces the camera: it runs anticlockwise from above, so the camera's right is a quarter turn on. */
const FROM_CAMERA_DEG = { right: 90, left: 270 } as const;

/** The weak side as one photo tells it; `null` when it leans to neither side or its turn is not told. */
export function weakSideOfView(history: PlantHistory): Pick<TurnAdvice, 'toLightAzimuthDeg' | 'sure'> | null {
  const leaning = leaningView(history);
  if (leaning === null || leaning.report.turnDeg === null) return null;
  return {
    toLightAzimuthDeg: wholeTurn(leaning.report.turnDeg + FROM_CAMERA_DEG[leaning.weak]),
    sure: sureOf(leaning.lopsidedness),
  };
}

/**
 * Which side to turn to the light, told by one photo: the weak one, which is the side away from where the canopy leans.
 *
 * @returns advice from the view that leans most, when it leans by more than its plus-minus; else `null`
 *
 * Notes: one photo knows left from right only. A photo from elsewhere shows another side and is not asked. No rate is promised: none is published for grown pot plants.
 *
 * Reference: a quarter turn a week: Penney, congresburygardening.org.uk, and two more growers; half a turn: one source.
 */
export function turnByOneView(history: PlantHistory): Advice | null {
  const leaning = leaningView(history);
  if (leaning === null) return null;
  const { report, lopsidedness, weak } = leaning;
  const { percent, plusMinus, side } = lopsidedness;
  const turnByDeg = turnByOf(leaning, history.lighting ?? null);
  const isTurned = turnByDeg !== null && Math.abs(turnByDeg) < LEAST_TURN_DEG;
  return {
    kind: 'turn',
    urgency: isTurned ? 0 : Math.abs(percent) > 3 * plusMinus ? 2 : 1,
    what:
      turnByDeg === null
        ? `Turn its ${weak} side to the light.`
        : turnOfSideInWords(turnByDeg, `its ${weak} side`),
    where: whereIsWeak(report, weak),
    howMuch: `The canopy’s middle stands ${Math.abs(percent).toFixed(1)} % of the ball’s radius to the ${side} (± ${plusMinus.toFixed(1)}).${changeInWords(history, report)}`,
    why: `The ${side} side is the heavier, and growth fills the side that faces the light. Growers turn a quarter once a week, some half; none publishes how fast it works.`,
    sureness: sureOf(lopsidedness),
    caution: null,
  };
}

/** From how the pot stands, as its recorded turns tell, else as it stood in the photo; anticlockwise seen from above. */
function turnByOf({ report, weak }: LeaningView, lighting: PlantLighting | null): number | null {
  const place = lighting?.place ?? null;
  if (place === null) return null;
  const { turnDeg } = report;
  const turnedSince =
    turnDeg === null || place.standsAtTurnDeg === null ? 0 : place.standsAtTurnDeg - turnDeg;
  return turnBetween(FROM_CAMERA_DEG[weak] - turnedSince, place.fromCameraDeg);
}

function sureOf({ percent, plusMinus }: Lopsidedness): 'likely' | 'unsure' {
  return Math.abs(percent) > 2 * plusMinus ? 'likely' : 'unsure';
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
  const azimuth = turnDeg + FROM_CAMERA_DEG[weak];
  return `The side on the ${weak} in the photo, at ${clockOfAzimuth(azimuth)} o’clock seen from above with the mark at 6. ${oneView}`;
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
