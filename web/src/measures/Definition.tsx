import { EXTRA_MEANINGS, type ExtraMeasure } from './extra-readings.ts';
import { MeaningRows } from './MeaningRows.tsx';
import { MEANINGS, type Meaning } from './meanings.ts';
import { PLANT_MEANINGS } from './plant-meanings.ts';
import type { PlantMeasure } from './plant-readings.ts';
import type { Measure } from './reading.ts';

/** The definition of a number of one photo. */
export default function Definition({
  measure,
  plusMinusKnown,
}: {
  measure: Measure | ExtraMeasure | PlantMeasure;
  plusMinusKnown: boolean;
}) {
  return <MeaningRows meaning={ALL_MEANINGS[measure]} plusMinusKnown={plusMinusKnown} />;
}

const ALL_MEANINGS: Record<Measure | ExtraMeasure | PlantMeasure, Meaning> = {
  ...MEANINGS,
  ...EXTRA_MEANINGS,
  ...PLANT_MEANINGS,
};
