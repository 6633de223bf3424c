import { dayInWords } from '../day/day-in-words.ts';
import type { TrendDirection, TrendSegment } from './trend.ts';

export type TrendMeasureName = 'roundness' | 'symmetry' | 'lopsidedness' | 'size';

interface Wording {
  readonly name: string;
  readonly unit: string;
  readonly moves: Record<Exclude<TrendDirection, 'no change'>, string>;
}

const UP_AND_DOWN = { rising: 'is rising', falling: 'is falling' };

const WORDINGS: Record<TrendMeasureName, Wording> = {
  roundness: { name: 'Roundness', unit: 'points', moves: UP_AND_DOWN },
  symmetry: { name: 'Symmetry', unit: 'points', moves: UP_AND_DOWN },
  lopsidedness: {
    name: 'The canopy',
    unit: '% of the ball’s radius',
    moves: { rising: 'is moving to the right', falling: 'is moving to the left' },
  },
  size: { name: 'The ball’s radius', unit: 'mm', moves: { rising: 'is growing', falling: 'is shrinking' } },
};

/**
 * One stretch of a trend as a sentence or two for a grower: the rate a week with its interval, and p in plain words.
 *
 * @param segment of `trendOf`
 * @param measure which of the measures it is a trend of; size in mm
 *
 * Notes: of a falling measure the rate is given without its minus, because the word says it; the interval of a measure
 * that does not change keeps its signs.
 *
 * Example: "Roundness is rising by 1.5 points a week (95 %: 1.0 to 2.0), 1 March to 29 March 2026. Chance alone would order
 * 5 sittings as clearly about 1 time in 60."
 */
export function trendInWords(segment: TrendSegment, measure: TrendMeasureName): string {
  const { direction, slopePerWeek, interval95, why } = segment;
  const { name, unit, moves } = WORDINGS[measure];
  if (direction === null || slopePerWeek === null) return `No trend of ${nameInside(measure)} yet. ${why}`;
  const days = `${dayInWords(segment.fromDay)} to ${dayInWords(segment.toDay)}`;
  if (direction === 'no change') {
    const ends = interval95 === null ? '' : ` (95 %: ${signed(interval95[0])} to ${signed(interval95[1])})`;
    return `No change of ${nameInside(measure)}: ${signed(slopePerWeek)} ${unit} a week${ends}, ${days}. ${why}`;
  }
  const sign = direction === 'rising' ? 1 : -1;
  const rates = (interval95 ?? []).map((end) => sign * end).sort((a, b) => a - b);
  const ends = interval95 === null ? '' : ` (95 %: ${rates.map(plain).join(' to ')})`;
  return `${name} ${moves[direction]} by ${plain(sign * slopePerWeek)} ${unit} a week${ends}, ${days}. ${why}`;
}

function nameInside(measure: TrendMeasureName): string {
  return measure === 'size' ? 'the ball’s radius' : measure;
}

function plain(rate: number): string {
  const text = Math.abs(rate).toFixed(1);
  return rate < 0 && text !== '0.0' ? `−${text}` : text;
}

function signed(rate: number): string {
  const text = plain(rate);
  return rate > 0 && text !== '0.0' ? `+${text}` : text;
}
