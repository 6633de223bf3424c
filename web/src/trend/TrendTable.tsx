import type { TrendPoint } from '../../../server/schemas/pages.ts';
import type { Stop } from '../../../server/schemas/sitting.ts';
import styles from '../parts/twin.module.css';
import { dayWords, todayHere } from '../words/day-words.ts';
import { STOP_WORDS } from '../words/plant-words.ts';
import type { SeriesPoint } from './series.ts';
import type { TrendMark } from './trend-marks.ts';
import { TREND_NAMES, type TrendMeasure } from './trend-measures.ts';
import { valueWords } from './trend-words.ts';

type Row = { day: string; key: string; words: string; isStop: boolean };

/** The trend in words and numbers, newest first; stops, what was done or seen, and what is left out among the sittings. */
export function TrendTable({
  measure,
  series,
  stops,
  marks,
  leftOut,
}: {
  measure: TrendMeasure;
  series: readonly SeriesPoint[];
  stops: readonly Stop[];
  marks: readonly TrendMark[];
  /** All sittings; those left out are told with their reason. */
  leftOut: readonly TrendPoint[];
}) {
  const today = todayHere();
  const rows: Row[] = [
    ...series.map((point) => ({
      day: point.day,
      key: point.sittingId,
      words: valueWords(point, measure),
      isStop: false,
    })),
    ...leftOut.flatMap(({ day, sittingId, leftOut: why }) =>
      why === null || series.some((point) => point.sittingId === sittingId)
        ? []
        : [{ day, key: sittingId, words: why, isStop: false }],
    ),
    ...marks.map(({ day, words }) => ({ day, key: `mark-${day}`, words, isStop: true })),
    ...stops.map((stop) => ({ day: stop.day, key: stop.id, words: STOP_WORDS[stop.depth], isStop: true })),
  ].sort((a, b) => (a.day < b.day ? 1 : -1));
  return (
    <details className={styles.twin}>
      <summary>The same as a table</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">{TREND_NAMES[measure]}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ day, key, words, isStop }) => (
            <tr key={key} data-stop={isStop || undefined}>
              <td>{dayWords(day, today)}</td>
              <td>{words}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
