import type { Plan } from '../plan/plan-words.ts';
import styles from './FigureMakeup.module.css';

/** How much is default and how much own record, as a bar; the sentence above it says the same. */
export function ShareBar({ shares }: { shares: Plan['planned']['shares'] }) {
  const parts = [
    { name: 'own', words: 'your own records', share: shares.own },
    { name: 'kind', words: 'other varieties', share: shares.kind },
    { name: 'default', words: 'default', share: shares.default },
  ].filter(({ share }) => share > 0);
  return (
    <div className={styles.bar} aria-hidden="true">
      {parts.map(({ name, words, share }) => (
        <span key={name} data-part={name} style={{ flexGrow: share }}>
          {words} {Math.round(100 * share)} %
        </span>
      ))}
    </div>
  );
}
