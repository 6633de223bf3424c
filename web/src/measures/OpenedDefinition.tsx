import { lazy, Suspense } from 'react';
import type { MeasuredPhoto } from './Definition.tsx';
import type { ExtraMeasure } from './extra-readings.ts';
import type { PlantMeasure } from './plant-readings.ts';
import type { Measure } from './reading.ts';

const Definition = lazy(() => import('./Definition.tsx'));

/** The definition of a number, fetched when the first one is opened. */
export function OpenedDefinition(props: {
  measure: Measure | ExtraMeasure | PlantMeasure;
  plusMinusKnown: boolean;
  photo?: MeasuredPhoto | null;
}) {
  return (
    <Suspense fallback={<p>One moment…</p>}>
      <Definition {...props} />
    </Suspense>
  );
}
