import { type Day, day, daysBetween } from '../../../core/day/day.ts';
import type { Stop } from '../../../server/schemas/sitting.ts';
import fold from '../parts/twin.module.css';
import { dayWords } from '../words/day-words.ts';
import { STOP_WORDS } from '../words/plant-words.ts';
import styles from './BloomSeen.module.css';
import { bloomEvents, curveWords, eventWords, readingWords, type ToldBloom } from './bloom-words.ts';

/** The curve in words: sittings, the days of the bloom, what is foretold week by week, stops and the show. */
export function BloomTable({
  bloom,
  stops,
  showDay,
  today,
}: {
  bloom: ToldBloom;
  stops: readonly Stop[];
  showDay: string | null;
  today: Day;
}) {
  const foretold = bloom.curve.filter(({ isForecast }) => isForecast);
  const first = foretold[0];
  const weekly = foretold.filter((one, at) => {
    const before = foretold[at - 1];
    if (!first || !before) return true;
    const week = (on: string) => Math.floor(daysBetween(day(first.day), day(on)) / 7);
    return week(one.day) !== week(before.day);
  });
  const rows = [
    ...bloom.readings.map((one) => ({
      day: one.day,
      words: `in flower: ${readingWords(one)}`,
      isMark: false,
    })),
    ...weekly.map((one) => ({ day: one.day, words: `foretold: ${curveWords(one)}`, isMark: false })),
    ...bloomEvents(bloom).map((event) => ({
      day: event.date.day,
      words: eventWords(event, today),
      isMark: true,
    })),
    ...stops.map((stop) => ({ day: stop.day, words: STOP_WORDS[stop.depth], isMark: true })),
    ...(showDay === null ? [] : [{ day: showDay, words: 'Show', isMark: true }]),
  ].sort((one, other) => (one.day < other.day ? -1 : 1));
  return (
    <details className={fold.twin}>
      <summary>The same as a table</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">Bloom</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ day: on, words, isMark }) => (
            <tr key={`${on}${words}`} data-stop={isMark || undefined}>
              <td className={styles.day}>{dayWords(on, today)}</td>
              <td>{words}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
