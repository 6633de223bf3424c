import { EXTRA_MEANINGS, type ExtraMeasure } from './extra-readings.ts';
import { MeaningRows } from './MeaningRows.tsx';
import { MEANINGS } from './meanings.ts';
import type { Measure } from './reading.ts';

/** The definition of a number of one photo. */
export default function Definition({
  measure,
  plusMinusKnown,
}: {
  measure: Measure | ExtraMeasure;
  plusMinusKnown: boolean;
}) {
  const meaning =
    measure in MEANINGS ? MEANINGS[measure as Measure] : EXTRA_MEANINGS[measure as ExtraMeasure];
  return <MeaningRows meaning={meaning} plusMinusKnown={plusMinusKnown} />;
}
