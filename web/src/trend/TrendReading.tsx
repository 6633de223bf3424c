import { useMemo } from 'react';
import { day } from '../../../core/day/day.ts';
import { type Trend, type TrendSegment, trendOf } from '../../../core/trend/trend.ts';
import type { Turn } from '../../../server/schemas/light.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Stop } from '../../../server/schemas/sitting.ts';
import { SavableChart } from '../export/SavableChart.tsx';
import { dayWords, todayHere } from '../words/day-words.ts';
import { MarkList } from './MarkList.tsx';
import type { SeriesPoint } from './series.ts';
import TrendChart from './TrendChart.tsx';
import styles from './TrendReading.module.css';
import { type TrendMark, turnedDays, turnedWords } from './trend-marks.ts';
import { isGrowth, TREND_NAMES, type TrendMeasure } from './trend-measures.ts';
import { trendWords } from './trend-words.ts';

/** The trend of one measure in words, stretch by stretch between the stops, and drawn. */
export default function TrendReading({
  plantName,
  measure,
  series,
  stops,
  turns,
  trends,
  showDay,
  marks,
}: {
  plantName: string;
  measure: TrendMeasure;
  series: readonly SeriesPoint[];
  stops: readonly Stop[];
  turns: readonly Turn[];
  trends: PlantPage['trends'];
  showDay: string | null;
  marks: readonly TrendMark[];
}) {
  const { segments } = trendOfMeasure(measure, series, stops, trends);
  const [newest, ...earlier] = segments.toReversed();
  const today = todayHere();
  const [first, last] = [series[0]?.day ?? today, series.at(-1)?.day ?? today];
  // Kept while nothing changes, or the chart would be drawn anew with every touch of the page.
  const turned = useMemo(() => turnedDays(turns, first, last), [turns, first, last]);
  return (
    <>
      {newest && (
        <NewestTrend
          measure={measure}
          segment={newest}
          afterStop={stops.some((stop) => stop.day < newest.fromDay)}
        />
      )}
      {series.length > 1 && (
        <SavableChart
          plantName={plantName}
          what={TREND_NAMES[measure]}
          lines={[
            `${dayWords(first, today)} to ${dayWords(last, today)}. The band is the plus-minus (95 %).`,
            ...(turned.length > 0 ? [turnedWords(turned)] : []),
            ...marks.map(({ number, day: on, words }) => `${number}  ${dayWords(on, today)}: ${words}`),
          ]}
        >
          <TrendChart {...{ measure, series, stops, segments, showDay, marks, turned }} />
        </SavableChart>
      )}
      {series.length > 1 && turned.length > 0 && <p className={styles.turned}>{turnedWords(turned)}</p>}
      {series.length > 1 && <MarkList marks={marks} />}
      {earlier.length > 0 && <EarlierTrends measure={measure} segments={earlier} />}
    </>
  );
}

function NewestTrend({
  measure,
  segment,
  afterStop,
}: {
  measure: TrendMeasure;
  segment: TrendSegment;
  afterStop: boolean;
}) {
  const { words, interval } = trendWords(segment, measure, afterStop);
  return (
    <details className={styles.trend} data-told={segment.direction !== null || undefined}>
      <summary>
        <span>
          {TREND_NAMES[measure]}: <b>{words}</b>
        </span>
      </summary>
      <p>
        {interval && `The rate lies ${interval} (95 %). `}
        {segment.why}
      </p>
      <p className={styles.how}>
        The rate is the middle one of the rates between all pairs of photos (Theil–Sen; Sen 1968). Rising or
        falling is said only when the order of the photos would come by chance less than 1 time in 20
        (Mann–Kendall test). A stop starts a new stretch. Four photos are the least; a direction needs five.
      </p>
    </details>
  );
}

function EarlierTrends({ measure, segments }: { measure: TrendMeasure; segments: readonly TrendSegment[] }) {
  const today = todayHere();
  return (
    <details className={styles.earlier}>
      <summary>Before the last stop</summary>
      <ul>
        {segments.map((segment) => (
          <li key={segment.fromDay}>
            {dayWords(segment.fromDay, today)} to {dayWords(segment.toDay, today)}:{' '}
            {segment.direction === null ? 'too few photos' : trendWords(segment, measure, false).words}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** The server tells the trend of the three scores; those of the sizes are told here, by the same rule. */
function trendOfMeasure(
  measure: TrendMeasure,
  series: readonly SeriesPoint[],
  stops: readonly Stop[],
  trends: PlantPage['trends'],
): Trend {
  if (measure !== 'size' && !isGrowth(measure)) return trends[measure] as Trend;
  return trendOf(
    series,
    stops.map((stop) => day(stop.day)),
  );
}
