import type { Measure } from './reading.ts';

export const MEASURE_NAMES: Record<Measure, string> = {
  roundness: 'Roundness',
  symmetry: 'Symmetry',
  lopsidedness: 'Lopsidedness',
  fill: 'Fill',
  size: 'Size',
  outOfRound: 'Out of round',
  bloom: 'Bloom',
};
