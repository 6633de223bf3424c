import { lazy, Suspense, useMemo, useState } from 'react';
import type { Turn } from '../../../server/schemas/light.ts';
import type { PlantPage, TrendPoint } from '../../../server/schemas/pages.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import type { Note, Stop } from '../../../server/schemas/sitting.ts';
import { Choices } from '../parts/Choices.tsx';
import styles from './TrendPanel.module.css';
import { TrendTable } from './TrendTable.tsx';
import { trendMarks } from './trend-marks.ts';
import { isGrowth, TREND_MEASURES, TREND_NAMES, type TrendMeasure } from './trend-measures.ts';
import { trendSeries } from './trend-series.ts';

const TrendReading = lazy(() => import('./TrendReading.tsx'));

/** One measure over the weeks, with its band, the stops and the same in a table. */
export function TrendPanel({
  plant,
  trend,
  stops,
  notes,
  turns,
  trends,
  growth,
}: {
  plant: Plant;
  trend: readonly TrendPoint[];
  stops: readonly Stop[];
  notes: readonly Note[];
  turns: readonly Turn[];
  trends: PlantPage['trends'];
  growth: PlantPage['growth'];
}) {
  const [measure, choose] = useState<TrendMeasure>('roundness');
  // Kept while nothing changes, or the chart would be drawn anew with every touch of the page.
  const series = useMemo(() => trendSeries(trend, growth, measure), [trend, growth, measure]);
  const marks = useMemo(() => trendMarks(notes, series), [notes, series]);
  return (
    <section aria-labelledby="trend-name">
      <h2 id="trend-name">Over the weeks</h2>
      <Choices
        legend="Measure"
        legendHidden
        options={TREND_MEASURES.map((one) => ({ value: one, words: TREND_NAMES[one] }))}
        chosen={measure}
        onChoose={choose}
      />
      {series.length === 0 ? (
        <p className={styles.few}>No sitting knows its {TREND_NAMES[measure].toLowerCase()} yet.</p>
      ) : (
        <Suspense fallback={<div className={styles.waiting}>Drawing…</div>}>
          <TrendReading
            plantName={plant.name}
            measure={measure}
            series={series}
            stops={stops}
            turns={turns}
            trends={trends}
            showDay={plant.showDay}
            marks={marks}
          />
        </Suspense>
      )}
      {isGrowth(measure) && growth && series.length > 0 && <p className={styles.few}>{growth.words}</p>}
      {series.length > 0 && (
        <TrendTable measure={measure} series={series} stops={stops} marks={marks} leftOut={trend} />
      )}
    </section>
  );
}
