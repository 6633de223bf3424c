import { LOG_WORDS } from '../../../core/season/log-entry.ts';
import type { PlantYear } from '../../../server/schemas/season.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import { STOP_WORDS } from '../words/plant-words.ts';
import styles from './YearScreen.module.css';

/** Stops and what was noted, in order of day, and how the planned stops were kept. */
export function YearLog({ year: { stops, log, plan } }: { year: PlantYear }) {
  const today = todayHere();
  const lines = [
    ...stops.map(({ day, depth }) => ({ key: `stop ${day}`, day, what: STOP_WORDS[depth], text: '' })),
    ...log.map(({ id, day, kind, text }) => ({ key: id, day, what: LOG_WORDS[kind], text })),
  ].sort((one, other) => (one.day < other.day ? -1 : 1));
  return (
    <section aria-labelledby="log-name" className={styles.part}>
      <h2 id="log-name">Stops and what was noted</h2>
      {plan !== null && (
        <ul className={styles.steps}>
          {plan.steps.map(({ role, words }) => (
            <li key={role}>{words}</li>
          ))}
        </ul>
      )}
      {lines.length === 0 ? (
        <p>Nothing was written down in this time.</p>
      ) : (
        <ol className={styles.log}>
          {lines.map(({ key, day, what, text }) => (
            <li key={key}>
              <span className={styles.day}>{dayWords(day, today)}</span>
              <span>
                <b>{what}.</b> <span translate="no">{text}</span>
              </span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
