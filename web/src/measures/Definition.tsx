import type { PhotoReport } from '../../../core/report.ts';
import type { Point } from '../photo/points.ts';
import { EXTRA_MEANINGS, type ExtraMeasure } from './extra-readings.ts';
import { MeaningRows } from './MeaningRows.tsx';
import { MEANINGS, type Meaning } from './meanings.ts';
import { MeasurePicture } from './pictures/MeasurePicture.tsx';
import { PLANT_MEANINGS } from './plant-meanings.ts';
import type { PlantMeasure } from './plant-readings.ts';
import { MEASURES, type Measure } from './reading.ts';

/** The photo that a number is of. */
export interface MeasuredPhoto {
  readonly report: PhotoReport;
  readonly outlinePx: readonly Point[];
}

/** The definition of a number of one photo, and the number drawn on it. */
export default function Definition({
  measure,
  plusMinusKnown,
  photo = null,
}: {
  measure: Measure | ExtraMeasure | PlantMeasure;
  plusMinusKnown: boolean;
  photo?: MeasuredPhoto | null;
}) {
  return (
    <MeaningRows meaning={ALL_MEANINGS[measure]} plusMinusKnown={plusMinusKnown}>
      {photo !== null && isScore(measure) && <MeasurePicture measure={measure} {...photo} />}
    </MeaningRows>
  );
}

function isScore(measure: Measure | ExtraMeasure | PlantMeasure): measure is Measure {
  return (MEASURES as readonly string[]).includes(measure);
}

const ALL_MEANINGS: Record<Measure | ExtraMeasure | PlantMeasure, Meaning> = {
  ...MEANINGS,
  ...EXTRA_MEANINGS,
  ...PLANT_MEANINGS,
};
