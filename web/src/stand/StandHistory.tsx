import type { Stand } from '../../../server/schemas/stand.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import styles from './StandScreen.module.css';

/** Every version of the stand, the newest first: from which day on, and what became other. */
export function StandHistory({ stand }: { stand: Stand }) {
  const today = todayHere();
  return (
    <section aria-labelledby="history-name">
      <h2 id="history-name">How it changed</h2>
      <ol className={styles.history} reversed>
        {stand.history.map(({ version, sinceDay, changed }) => (
          <li key={version} value={version}>
            <b>{dayWords(sinceDay, today)}.</b> {changed}
          </li>
        ))}
      </ol>
    </section>
  );
}
