import { plusMinusWords } from '../measures/reading.ts';
import { clockWords, countWords, STOP_WORDS } from '../words/plant-words.ts';
import { type ListedCut, progressOf } from './listed-cut.ts';

/** Hour of a cut: seen from above in a turned sitting, else in the photo; `null` for none. */
export function hourOf({ clockFromAbove, clockInPhoto }: ListedCut): number | null {
  return clockFromAbove ?? clockInPhoto;
}

export function placeWordsOf(cut: ListedCut): string {
  const hour = hourOf(cut);
  return hour === null ? 'no hour' : clockWords(hour);
}

/** How much comes off, figure and unit apart: the figure is read at arm's length. */
export function takeOffParts({ takeOffMm, takeOffPercent }: ListedCut): { figure: string; unit: string } {
  return takeOffMm === null
    ? { figure: takeOffPercent.toFixed(0), unit: '% of the radius' }
    : { figure: takeOffMm.toFixed(0), unit: 'mm' };
}

export function takeOffWords(cut: ListedCut): string {
  const { figure, unit } = takeOffParts(cut);
  return unit === 'mm' ? `${figure} mm` : `${figure} %`;
}

/** "120 mm above the rim"; `null` where the height is not known. */
export function heightWords({ heightMm }: ListedCut): string | null {
  if (heightMm === null) return null;
  const height = Math.round(heightMm);
  if (height === 0) return 'level with the rim';
  return `${Math.abs(height)} mm ${height > 0 ? 'above' : 'below'} the rim`;
}

/** Above which shoot, if one is seen. */
export function shootWords({ aboveShootPx }: ListedCut): string {
  return aboveShootPx === null
    ? 'No side shoot is seen at the mark: look for a joint just below it and cut above that.'
    : 'Cut just above the side shoot that is seen below the mark.';
}

export function kindWords({ kind }: ListedCut): string {
  return kind === 'shoot' ? 'a long stem' : 'a broad shoulder';
}

/** What a cut mark says when it is tapped. */
export function cutTold(cut: ListedCut): string {
  const height = heightWords(cut);
  const state = cut.state === 'done' ? ' It is done.' : '';
  return `Cut ${cut.number}: ${kindWords(cut)} at ${placeWordsOf(cut)}${height ? `, ${height}` : ''}. ${takeOffWords(cut)} off, a ${STOP_WORDS[cut.stop].toLowerCase()}.${state}`;
}

/** "±8 mm", beside how sure; `null` where it is not known. */
export function doubtWords({ plusMinusMm }: ListedCut): string | null {
  return plusMinusMm === null ? null : `${plusMinusWords(plusMinusMm)} mm`;
}

/** "2 of 7 done, 1 skipped, 1 not chosen." */
export function progressWords(cuts: readonly ListedCut[]): string {
  const { planned, done, skipped, leftOut } = progressOf(cuts);
  return `${[
    `${done} of ${planned} done`,
    skipped > 0 && `${skipped} skipped`,
    leftOut > 0 && `${leftOut} not chosen`,
  ]
    .filter(Boolean)
    .join(', ')}.`;
}

/** "7 cuts: 5 tip stops, 2 deep stops"; the ball of an even plant needs none. */
export function countedWords(cuts: readonly ListedCut[]): string {
  const of = (stop: ListedCut['stop']) => cuts.filter((cut) => cut.stop === stop).length;
  const [tips, deep] = [of('tip'), of('deep')];
  const stops = [tips > 0 && countWords(tips, 'tip stop'), deep > 0 && countWords(deep, 'deep stop')].filter(
    Boolean,
  );
  return `${countWords(cuts.length, 'cut')}: ${stops.join(', ')}`;
}
