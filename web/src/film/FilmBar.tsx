import { dayWords, shortDayWords, todayHere } from '../words/day-words.ts';
import styles from './FilmBar.module.css';
import { FilmSign } from './FilmSign.tsx';
import type { FilmMark } from './film-marks.ts';

/** The bar to draw along, a step a picture, with what was done and seen marked above it. */
export function FilmBar({
  days,
  index,
  marks,
  onGoTo,
}: {
  days: readonly string[];
  index: number;
  marks: readonly FilmMark[];
  onGoTo: (index: number) => void;
}) {
  const today = todayHere();
  const last = Math.max(days.length - 1, 1);
  return (
    <div className={styles.bar}>
      <div className={styles.marks} aria-hidden="true">
        {marks.map(({ key, sign, at, words, day }) => (
          <span
            key={key}
            className={styles.mark}
            data-sign={sign}
            style={{ '--at': at / last } as object}
            title={`${words}, ${dayWords(day, today)}`}
          >
            <FilmSign sign={sign} />
          </span>
        ))}
      </div>
      <input
        type="range"
        className={styles.range}
        aria-label="Picture"
        aria-valuetext={`${dayWords(days[index] ?? '', today)}, picture ${index + 1} of ${days.length}`}
        min={0}
        max={days.length - 1}
        step={1}
        value={index}
        onChange={(event) => onGoTo(Number(event.target.value))}
      />
      <div className={styles.ends} aria-hidden="true">
        <span>{shortDayWords(days[0] ?? '')}</span>
        <span>{shortDayWords(days.at(-1) ?? '')}</span>
      </div>
    </div>
  );
}
