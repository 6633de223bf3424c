import { dayWords, todayHere } from '../words/day-words.ts';
import styles from './MarkList.module.css';
import type { TrendMark } from './trend-marks.ts';

/** What the numbers on the chart stand for. */
export function MarkList({ marks }: { marks: readonly TrendMark[] }) {
  if (marks.length === 0) return null;
  const today = todayHere();
  return (
    <ol className={styles.marks} aria-label="Done or seen in this time">
      {marks.map(({ number, day, words }) => (
        <li key={day}>
          <span className={styles.number}>{number}</span>
          <span>
            {dayWords(day, today)}: {words}
          </span>
        </li>
      ))}
    </ol>
  );
}
