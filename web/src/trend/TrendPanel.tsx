import { lazy, Suspense, useState } from 'react';
import type { TrendPoint } from '../../../server/schemas/pages.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import type { Stop } from '../../../server/schemas/sitting.ts';
import { MEANINGS } from '../measures/meanings.ts';
import { seriesOf, TREND_MEASURES, type TrendMeasure } from './series.ts';
import styles from './TrendPanel.module.css';
import { TrendTable } from './TrendTable.tsx';

const TrendChart = lazy(() => import('./TrendChart.tsx'));

/** One measure over the weeks, with its band, the stops and the same in a table. */
export function TrendPanel({
  plant,
  trend,
  stops,
}: {
  plant: Plant;
  trend: readonly TrendPoint[];
  stops: readonly Stop[];
}) {
  const [measure, choose] = useState<TrendMeasure>('roundness');
  const series = seriesOf(trend, measure);
  return (
    <section aria-labelledby="trend-name">
      <h2 id="trend-name">Over the weeks</h2>
      <fieldset className={styles.choices}>
        <legend className="only-heard">Measure</legend>
        {TREND_MEASURES.map((one) => (
          <label key={one} className={styles.choice}>
            <input type="radio" name="trend-measure" checked={one === measure} onChange={() => choose(one)} />
            {MEANINGS[one].name}
          </label>
        ))}
      </fieldset>
      {series.length < 2 ? (
        <p className={styles.few}>
          {series.length === 0
            ? `No sitting knows its ${MEANINGS[measure].name.toLowerCase()} yet.`
            : 'One sitting is not a trend. It starts with the second.'}
        </p>
      ) : (
        <Suspense fallback={<div className={styles.waiting}>Drawing…</div>}>
          <TrendChart measure={measure} series={series} stops={stops} showDay={plant.showDay} />
        </Suspense>
      )}
      {series.length > 0 && <TrendTable measure={measure} series={series} stops={stops} />}
    </section>
  );
}
