import { lazy, Suspense, useState } from 'react';
import type { PlantPage, TrendPoint } from '../../../server/schemas/pages.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import type { Stop } from '../../../server/schemas/sitting.ts';
import { MEASURE_NAMES } from '../measures/measure-names.ts';
import { Choices } from '../parts/Choices.tsx';
import { seriesOf, TREND_MEASURES, type TrendMeasure } from './series.ts';
import styles from './TrendPanel.module.css';
import { TrendTable } from './TrendTable.tsx';

const TrendReading = lazy(() => import('./TrendReading.tsx'));

/** One measure over the weeks, with its band, the stops and the same in a table. */
export function TrendPanel({
  plant,
  trend,
  stops,
  trends,
}: {
  plant: Plant;
  trend: readonly TrendPoint[];
  stops: readonly Stop[];
  trends: PlantPage['trends'];
}) {
  const [measure, choose] = useState<TrendMeasure>('roundness');
  const series = seriesOf(trend, measure);
  return (
    <section aria-labelledby="trend-name">
      <h2 id="trend-name">Over the weeks</h2>
      <Choices
        legend="Measure"
        legendHidden
        options={TREND_MEASURES.map((one) => ({ value: one, words: MEASURE_NAMES[one] }))}
        chosen={measure}
        onChoose={choose}
      />
      {series.length === 0 ? (
        <p className={styles.few}>No sitting knows its {MEASURE_NAMES[measure].toLowerCase()} yet.</p>
      ) : (
        <Suspense fallback={<div className={styles.waiting}>Drawing…</div>}>
          <TrendReading
            measure={measure}
            series={series}
            stops={stops}
            trends={trends}
            showDay={plant.showDay}
          />
        </Suspense>
      )}
      {series.length > 0 && <TrendTable measure={measure} series={series} stops={stops} />}
    </section>
  );
}
