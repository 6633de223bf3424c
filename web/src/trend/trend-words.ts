import type { TrendSegment } from '../../../core/trend/trend.ts';
import { plusMinusWords } from '../measures/reading.ts';
import type { SeriesPoint } from './series.ts';
import { isSize, TREND_UNITS, type TrendMeasure, trendNumber } from './trend-measures.ts';

/** What a segment of trend is called: the sentence, and whether it is told by the test. */
export interface TrendSentence {
  readonly words: string;
  /** "between 0.6 and 1.9 points a week"; null where the test tells no direction. */
  readonly interval: string | null;
}

/** "rising by 1.2 points a week, sure", "no change", "fewer than four photos since the last stop: no trend yet". */
export function trendWords(segment: TrendSegment, measure: TrendMeasure, afterStop: boolean): TrendSentence {
  const { direction, slopePerWeek, interval95 } = segment;
  if (direction === null) {
    const since = afterStop ? ' since the last stop' : '';
    return { words: `fewer than four photos${since}: no trend yet`, interval: null };
  }
  if (direction === 'no change' || slopePerWeek === null) return { words: 'no change', interval: null };
  const unit = TREND_UNITS[measure];
  const words = `${directionWords(direction, measure)} by ${rateWords(Math.abs(slopePerWeek))} ${unit} a week, sure`;
  if (!interval95) return { words, interval: null };
  const along = Math.sign(slopePerWeek);
  const [least, most] = interval95.map((rate) => along * rate).sort((a, b) => a - b) as [number, number];
  const from = least < 0 ? `${rateWords(-least)} the other way` : rateWords(least);
  return { words, interval: `between ${from} and ${rateWords(most)} ${unit} a week` };
}

/** "84 ±2", "6.1 % to the left ±2.4", "312 mm". */
export function valueWords({ value, plusMinus }: SeriesPoint, measure: TrendMeasure): string {
  const number = trendNumber(Math.abs(value), measure);
  const spread = plusMinusWords(plusMinus) ?? '';
  if (isSize(measure)) return `${number} ${spread} ${TREND_UNITS[measure]}`.replace(/ +/g, ' ');
  if (measure !== 'lopsidedness') return `${number} ${spread}`.trim();
  const side = value === 0 ? '' : value < 0 ? 'to the left' : 'to the right';
  return `${number} % ${side} ${spread}`.replace(/ +/g, ' ').trim();
}

/** Lopsidedness rises to the right; the plant is said to move, not to rise. */
function directionWords(direction: 'rising' | 'falling', measure: TrendMeasure): string {
  if (measure === 'lopsidedness')
    return direction === 'rising' ? 'moving to the right' : 'moving to the left';
  if (isSize(measure)) return direction === 'rising' ? 'growing' : 'shrinking';
  return direction;
}

/** Rates below ten carry a tenth; none is rounded to nothing. */
function rateWords(rate: number): string {
  if (rate >= 10) return trendNumber(rate, 'size');
  return rate < 0.05 ? 'less than 0.1' : rate.toFixed(1);
}
