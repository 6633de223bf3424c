import type { CutList } from '../../../server/schemas/cuts.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import { SURENESS_WORDS } from '../words/need-words.ts';
import styles from './BallSection.module.css';

/** How the ball has grown and how wide it will be if it is left alone; or why that is not known. */
export function GrowthWords({ list, plant }: { list: CutList; plant: Plant }) {
  const { growth, growthWhyNot } = list;
  if (growth === null) return growthWhyNot ? <p>{growthWhyNot}</p> : null;
  const last = growth.forecast.at(-1);
  const today = todayHere();
  return (
    <details className={styles.other}>
      <summary>How it grows if it is left alone</summary>
      <div className={styles.notes}>
        <p>{growth.words}</p>
        {last && (
          <p>
            On {dayWords(last.day, today)}
            {last.day === plant.showDay && ', the day of the show'}: about{' '}
            <b>{Math.round(2 * last.radiusMm)} mm across</b>, between{' '}
            {Math.round(2 * last.readingRange90Mm[0])} and {Math.round(2 * last.readingRange90Mm[1])} mm nine
            times out of ten.
          </p>
        )}
        <p>
          <b>{SURENESS_WORDS[growth.sureness]}.</b> {growth.why}
        </p>
        {growth.notes.map((note) => (
          <p key={note}>{note}</p>
        ))}
      </div>
    </details>
  );
}
