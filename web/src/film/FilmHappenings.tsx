import { dayWords, todayHere } from '../words/day-words.ts';
import styles from './FilmHappenings.module.css';
import { FilmSign } from './FilmSign.tsx';
import type { FilmMark } from './film-marks.ts';

/** Stops, turns and bloom in the time of the film; a press goes to the first picture after it. */
export function FilmHappenings({
  marks,
  index,
  onGoTo,
}: {
  marks: readonly FilmMark[];
  index: number;
  onGoTo: (index: number) => void;
}) {
  if (marks.length === 0) return <p>No stop, turn or bloom was written down in this time.</p>;
  const today = todayHere();
  return (
    <ol className={styles.list}>
      {marks.map(({ key, sign, day, words, at }) => (
        <li key={key}>
          <button
            type="button"
            aria-current={(Math.ceil(at) === index && 'step') || undefined}
            onClick={() => onGoTo(Math.ceil(at))}
          >
            <FilmSign sign={sign} />
            <span>
              {words}, {dayWords(day, today)}
            </span>
          </button>
        </li>
      ))}
    </ol>
  );
}
