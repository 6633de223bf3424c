import { day, daysBetween } from '../../../core/day/day.ts';
import type { PlantLight } from '../../../server/schemas/light.ts';
import { agoWords, dayWords, todayHere } from '../words/day-words.ts';
import { SURENESS_WORDS } from '../words/need-words.ts';
import styles from './LightSection.module.css';

/** The next turn: when, how far, why and how sure. */
export function NextTurn({ next }: { next: NonNullable<PlantLight['next']> }) {
  const today = todayHere();
  const inDays = daysBetween(today, day(next.dueDay));
  const when =
    inDays < 0
      ? `Due since ${dayWords(next.dueDay, today)}`
      : inDays === 0
        ? 'Due today'
        : `Due ${dayWords(next.dueDay, today)}, ${agoWords(next.dueDay, today)}`;
  return (
    <div className={styles.next}>
      <p>
        <b>{when}.</b>
      </p>
      <h3>{next.words}</h3>
      <p>{next.why}</p>
      <p>
        <b>{SURENESS_WORDS[next.sure]}.</b>
      </p>
    </div>
  );
}
