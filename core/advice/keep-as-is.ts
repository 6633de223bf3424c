import { dayInWords } from '../day/day-in-words.ts';
import type { PhotoReport } from '../report.ts';
import { changeSince } from '../trend/change-since.ts';
import type { Advice } from './advice.ts';
import { newestComparable, type PlantHistory, reportBefore } from './plant-history.ts';

/**
 * Says that nothing needs doing, and what that rests on.
 *
 * @returns advice when the newest sitting was measured from the stand's place; whether other advice stands is the caller's to see
 */
export function keepAsIs(history: PlantHistory): Advice | null {
  const report = newestComparable(history)?.reports[0];
  if (!report?.roundness) return null;
  const isSideKnown = report.lopsidedness !== null;
  return {
    kind: 'keep',
    urgency: 0,
    what: 'Keep on as you do.',
    where: null,
    howMuch: `Roundness ${scoreInWords(report.roundness)}.${changeInWords(history, report)}`,
    why: isSideKnown
      ? 'No stem stands far outside the ball, and it leans to neither side by more than the plus-minus.'
      : 'No stem stands far outside the ball. Which side is weak cannot be told, because no pot rim was found.',
    sureness: isSideKnown ? 'likely' : 'unsure',
    caution: null,
  };
}

function scoreInWords({ score, plusMinus }: { score: number; plusMinus: number }): string {
  return `${score.toFixed(1)} ± ${plusMinus.toFixed(1)}`;
}

function changeInWords(history: PlantHistory, report: PhotoReport): string {
  const before = reportBefore(history, report);
  if (!before?.report.roundness || !report.roundness) return '';
  const change = changeSince(
    { value: before.report.roundness.score, plusMinus: before.report.roundness.plusMinus },
    { value: report.roundness.score, plusMinus: report.roundness.plusMinus },
  );
  const since = `since ${dayInWords(before.day)}`;
  if (change.direction === 'none') return ` No change ${since}.`;
  const word = change.direction === 'up' ? 'rounder' : 'less round';
  return ` It has become ${word} by ${Math.abs(change.by).toFixed(1)} ${since}.`;
}
