import type { ReactNode } from 'react';
import type { Day } from '../../../../core/day/day.ts';
import styles from './PlanLine.module.css';
import { ROLE_WORDS, type Step, windowWords } from './plan-words.ts';

/** One stop of the plan with its days and how it stands. */
export function PlanStep({ step, today, children }: { step: Step; today: Day; children: ReactNode }) {
  const { role, depth, window, usual, state, words } = step;
  return (
    <li className={styles.step} data-state={state}>
      <p>
        <b>
          {ROLE_WORDS[role]} ({depth})
        </b>
        , planned {windowWords(window, today)}
      </p>
      {state !== 'to-come' && <p>{words}</p>}
      {usual && state !== 'done' && state !== 'left-out' && (
        <p className={styles.sub}>Growers usually: {windowWords(usual, today)}.</p>
      )}
      {children}
    </li>
  );
}
