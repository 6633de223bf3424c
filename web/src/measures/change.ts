import type { PhotoReport } from '../../../core/report.ts';
import { changeSince as changeOf } from '../../../core/trend/change-since.ts';
import { type Measure, numberWords, readMeasure } from './reading.ts';

/** What became of a measure between two sittings, and whether that is good, bad or neither. */
export interface Change {
  readonly words: string;
  readonly sense: 'better' | 'worse' | 'neither';
}

/**
 * Words the change of a measure since an earlier report. Inside the plus-minus of the difference,
 * √(now² + before²), it is "no change"; without a plus-minus the bare difference is given and judged
 * neither way. `null` when either report lacks the number.
 */
export function changeSince(now: PhotoReport, before: PhotoReport, measure: Measure): Change | null {
  const [current, earlier] = [signedReading(now, measure), signedReading(before, measure)];
  if (current.value === null || earlier.value === null) return null;
  const difference = current.value - earlier.value;
  if (current.plusMinus === null || earlier.plusMinus === null) {
    return { words: bareDifference(difference, measure), sense: 'neither' };
  }
  const { direction } = changeOf(
    { value: earlier.value, plusMinus: earlier.plusMinus },
    { value: current.value, plusMinus: current.plusMinus },
  );
  if (direction === 'none') return { words: 'no change', sense: 'neither' };
  if (measure === 'lopsidedness') return leanChange(current.value, earlier.value);
  return { words: signed(difference, measure), sense: senseOf(measure, difference) };
}

/** Lopsidedness keeps its side while differences are taken: 4 left to 4 right is a change of 8. */
function signedReading(report: PhotoReport, measure: Measure) {
  if (measure !== 'lopsidedness') return readMeasure(report, measure);
  return { value: report.lopsidedness?.percent ?? null, plusMinus: report.lopsidedness?.plusMinus ?? null };
}

function leanChange(now: number, before: number): Change {
  const moved = `moved ${numberWords(Math.abs(now - before), 'lopsidedness')} % to the ${now > before ? 'right' : 'left'}`;
  return { words: moved, sense: Math.abs(now) < Math.abs(before) ? 'better' : 'worse' };
}

/** Growing and blooming are neither better nor worse; out of round is better when less. */
function senseOf(measure: Measure, difference: number): Change['sense'] {
  if (measure === 'size' || measure === 'bloom') return 'neither';
  const more = difference > 0;
  return more === (measure !== 'outOfRound') ? 'better' : 'worse';
}

/** Without a plus-minus nothing can be called a change, so the difference only stands there. */
function bareDifference(difference: number, measure: Measure): string {
  const same = Number(numberWords(Math.abs(difference), measure)) === 0;
  return same ? 'the same figure' : `${signed(difference, measure)}, may be chance`;
}

function signed(difference: number, measure: Measure): string {
  const size = numberWords(Math.abs(difference), measure);
  const unit = readUnit(measure);
  return `${difference > 0 ? '+' : '−'}${size}${unit}`;
}

function readUnit(measure: Measure): string {
  if (measure === 'size' || measure === 'outOfRound') return ' mm';
  return measure === 'fill' || measure === 'bloom' ? ' %' : '';
}
