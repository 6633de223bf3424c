import type { CutList } from '../../../server/schemas/cuts.ts';
import styles from './BesideTheHand.module.css';

/** How to work, and the cautions, where the knife is. */
export function BesideTheHand({ advice }: { advice: CutList['advice'] }) {
  const howTo = advice.filter(({ caution }) => !caution);
  return (
    <div className={styles.beside}>
      {advice
        .filter(({ caution }) => caution)
        .map(({ words }) => (
          <p key={words} className={styles.caution}>
            <b>Take care.</b> {words}
          </p>
        ))}
      {howTo.length > 0 && (
        <details className={styles.howTo}>
          <summary>How to work: clean blade, dry plant, airy day</summary>
          <ul>
            {howTo.map(({ words }) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
