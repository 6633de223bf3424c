import { MeaningRows } from '../measures/MeaningRows.tsx';
import { TURNED_MEANINGS } from './turned-meanings.ts';
import type { TurnedMeasure } from './turned-readings.ts';

/** The definition of a number of a turned sitting. */
export default function TurnedDefinition({
  measure,
  plusMinusKnown,
}: {
  measure: TurnedMeasure;
  plusMinusKnown: boolean;
}) {
  return <MeaningRows meaning={TURNED_MEANINGS[measure]} plusMinusKnown={plusMinusKnown} />;
}
