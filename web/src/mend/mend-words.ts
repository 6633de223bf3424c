import type { View } from '../../../server/schemas/sitting.ts';
import { numberWords, plusMinusWords } from '../measures/reading.ts';
import type { UnsureZone } from '../photo/outline-words.ts';
import { chanceWords, sureWords } from '../photo/outline-words.ts';
import type { Point } from '../photo/points.ts';

export type Brush = 'keep' | 'remove' | 'move';

export const BRUSH_WORDS: Record<Brush, string> = { keep: 'Keep', remove: 'Remove', move: 'Move' };

/** What each choice does, said when it is chosen. */
export const BRUSH_MEANINGS: Record<Brush, string> = {
  keep: 'Keep: paint over leaf, flower or stem that was left out.',
  remove: 'Remove: paint over what is not plant.',
  move: 'Move: drag the photo with one finger. Two fingers move it at any time.',
};

export const NO_ZONE = 'No unsure zone is open.';

export const NOT_SENT = 'Not sent. Your strokes stay on the screen.';

export const CUTTING = 'Cutting the outline anew…';

/** What came of the strokes: said once the photo has been cut and measured anew. */
export function answerWords({ report }: View): string {
  if (report?.status !== 'measured') return report?.hint ?? 'The photo has no outline now.';
  const sure = report.confidence === null ? 'Outline cut anew' : `Outline ${sureWords(report.confidence)}`;
  const { roundness } = report;
  if (!roundness) return `${sure}.`;
  return `${sure}, roundness ${numberWords(roundness.score, 'roundness')} ${plusMinusWords(roundness.plusMinus)}.`;
}

export function zoneWords(zone: UnsureZone, index: number, count: number): string {
  const place = count === 1 ? 'One unsure zone' : `Unsure zone ${index + 1} of ${count}`;
  return `${place}, ${chanceWords(zone.chance)} leaf, ${zone.inCanopy ? 'counted' : 'not counted'}.`;
}

export function crossWords([x, y]: Point, inside: boolean): string {
  return `${x.toFixed(0)} across, ${y.toFixed(0)} down, ${inside ? 'inside' : 'outside'} the outline`;
}

export function countStrokes(count: number): string {
  return count === 0 ? 'no strokes' : `${count} ${count === 1 ? 'stroke' : 'strokes'}`;
}
