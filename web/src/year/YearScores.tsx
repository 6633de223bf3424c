import type { PlantYear } from '../../../server/schemas/season.ts';
import { MEASURE_NAMES } from '../measures/measure-names.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import styles from './YearScreen.module.css';
import { scoreWords, YEAR_MEASURES } from './year-words.ts';

/** Every sitting's scores with their plus-minus. */
export function YearScores({ sittings }: { sittings: PlantYear['sittings'] }) {
  const today = todayHere();
  if (sittings.length === 0) return null;
  return (
    <section aria-labelledby="scores-name" className={styles.part}>
      <h2 id="scores-name">Scores</h2>
      <p className={styles.note}>
        Each with its 95 % plus-minus: a change inside it is no change. What each number means stands beside
        it on the plant’s page.
      </p>
      <table className={styles.scores}>
        <thead>
          <tr>
            <th scope="col">Day</th>
            {YEAR_MEASURES.map((measure) => (
              <th key={measure} scope="col">
                {MEASURE_NAMES[measure]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sittings.map((sitting) => (
            <tr key={sitting.sittingId}>
              <th scope="row">
                {dayWords(sitting.day, today)}
                {sitting.setAside !== null && <small>Left out: {sitting.setAside}</small>}
              </th>
              {YEAR_MEASURES.map((measure) => (
                <td key={measure}>{scoreWords(sitting, measure)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
