import type { ReactNode } from 'react';
import { Icon } from '../parts/Icon.tsx';
import styles from './CutRow.module.css';
import type { ListedCut } from './listed-cut.ts';
import type { Marking } from './use-marking.ts';

/** Done, skip and chosen of one cut. */
export function CutActs({
  cut,
  marking,
  whichId,
  onSettled,
  children,
}: {
  cut: ListedCut;
  marking: Marking;
  /** Of the words that say which cut this is. */
  whichId: string;
  /** The cut was ticked off, skipped or opened again. */
  onSettled: () => void;
  /** What stands beside "chosen". */
  children: ReactNode;
}) {
  const { state, chosen, number } = cut;

  async function settle(to: ListedCut['state']) {
    // Pressed again it is open again; done is done, chosen or not: it counts in what comes after.
    const next = state === to ? 'open' : to;
    const change = next === 'done' ? { state: next, chosen: true } : { state: next };
    if (await marking.mark(cut, change, `Cut ${number} ${STATE_WORDS[next]}.`)) onSettled();
  }

  return (
    <>
      <div className={styles.acts}>
        <button
          type="button"
          className={styles.done}
          aria-pressed={state === 'done'}
          aria-describedby={whichId}
          onClick={() => settle('done')}
        >
          <span className={styles.box} aria-hidden="true">
            {state === 'done' && <Icon name="keep" size={28} />}
          </span>
          Done
        </button>
        <button
          type="button"
          className={styles.skip}
          aria-pressed={state === 'skipped'}
          aria-describedby={whichId}
          onClick={() => settle('skipped')}
        >
          {state === 'skipped' ? 'Skipped' : 'Skip'}
        </button>
      </div>
      <div className={styles.more}>
        <label className={styles.chosen}>
          <input
            type="checkbox"
            checked={chosen}
            disabled={state === 'done'}
            aria-describedby={whichId}
            onChange={() =>
              marking.mark(cut, { chosen: !chosen }, `Cut ${number} is ${chosen ? 'not ' : ''}chosen.`)
            }
          />
          Chosen
        </label>
        {children}
      </div>
    </>
  );
}

const STATE_WORDS: Record<ListedCut['state'], string> = {
  open: 'is open again',
  done: 'is done',
  skipped: 'is skipped',
};
