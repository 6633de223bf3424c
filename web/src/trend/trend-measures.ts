import { MEASURE_NAMES } from '../measures/measure-names.ts';
import { numberWords } from '../measures/reading.ts';

/** Sizes in mm, and the area as seen in cm². */
export const GROWTH_MEASURES = ['height', 'width', 'area'] as const;
export type GrowthMeasure = (typeof GROWTH_MEASURES)[number];

export const TREND_MEASURES = ['roundness', 'symmetry', 'lopsidedness', 'size', ...GROWTH_MEASURES] as const;
export type TrendMeasure = (typeof TREND_MEASURES)[number];

export const TREND_NAMES: Record<TrendMeasure, string> = {
  roundness: MEASURE_NAMES.roundness,
  symmetry: MEASURE_NAMES.symmetry,
  lopsidedness: MEASURE_NAMES.lopsidedness,
  size: MEASURE_NAMES.size,
  height: 'Height',
  width: 'Width',
  area: 'Area',
};

export const TREND_UNITS: Record<TrendMeasure, string> = {
  roundness: 'points',
  symmetry: 'points',
  lopsidedness: '%',
  size: 'mm',
  height: 'mm',
  width: 'mm',
  area: 'cm²',
};

export function isGrowth(measure: TrendMeasure): measure is GrowthMeasure {
  return (GROWTH_MEASURES as readonly TrendMeasure[]).includes(measure);
}

/** Whether it is a size that grows and shrinks, in place of a score that rises and falls. */
export function isSize(measure: TrendMeasure): boolean {
  return measure === 'size' || isGrowth(measure);
}

/** A number of the trend as it is read: sizes whole, the lean with a tenth. */
export function trendNumber(value: number, measure: TrendMeasure): string {
  return numberWords(value, isGrowth(measure) ? 'size' : measure);
}
