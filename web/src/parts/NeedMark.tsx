import { URGENCY_WORDS, type Urgency } from '../words/need-words.ts';
import styles from './NeedMark.module.css';

/** The ball as a sign of need: full today, half this week, empty when convenient, a dash for nothing. */
export function NeedMark({ urgency }: { urgency: Urgency }) {
  return (
    <span className={styles.mark} data-urgency={urgency}>
      <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
        {urgency === 0 ? (
          <path d="M4 9h10" stroke="currentColor" strokeWidth="2.4" strokeLinecap="round" />
        ) : (
          <circle cx="9" cy="9" r="6.6" fill="none" stroke="currentColor" strokeWidth="2.2" />
        )}
        {urgency === 2 && <path d="M9 2.4a6.6 6.6 0 0 0 0 13.2z" fill="currentColor" />}
        {urgency === 3 && <circle cx="9" cy="9" r="7" fill="currentColor" />}
      </svg>
      {URGENCY_WORDS[urgency]}
    </span>
  );
}
