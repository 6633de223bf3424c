import type { EntryCheck } from '../../../core/season/entry-checks.ts';
import styles from './CheckList.module.css';
import { LIMIT_WORDS, VERDICT_WORDS } from './show-words.ts';

/** What a class says of a plant now, limit by limit. */
export function CheckList({ checks }: { checks: readonly EntryCheck[] }) {
  if (checks.length === 0) return null;
  return (
    <ul className={styles.checks}>
      {checks.map(({ limit, verdict, words }) => (
        <li key={limit} data-verdict={verdict}>
          <b>
            {LIMIT_WORDS[limit]}: {VERDICT_WORDS[verdict].toLowerCase()}.
          </b>{' '}
          {words}
        </li>
      ))}
    </ul>
  );
}
