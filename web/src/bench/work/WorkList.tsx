import { useRef } from 'react';
import { countWords } from '../../words/plant-words.ts';
import type { BenchRow } from '../need-groups.ts';
import { SettledWork } from './SettledWork.tsx';
import { WorkLine } from './WorkLine.tsx';
import styles from './WorkList.module.css';
import { benchWork, plantsIn, type WorkGroup } from './work-groups.ts';

/** So many lines leave the plants within reach of a thumb. */
const IN_SIGHT = 3;

/** The dated work of all plants shown: today's first in sight, the rest, the week's and what is settled folded away. */
export function WorkList({ rows }: { rows: readonly BenchRow[] }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const { today, thisWeek, settled } = benchWork(rows);
  const rest = today.slice(IN_SIGHT);
  // The button that was pressed goes with its line: the focus stays in the list.
  const onSettled = () => heading.current?.focus();
  if (today.length + thisWeek.length + settled.length === 0) return null;
  return (
    <section className={styles.section} aria-labelledby="work-name">
      <h2 id="work-name" ref={heading} tabIndex={-1} className={styles.name}>
        Work for today
        {today.length > 0 && <small> on {countWords(plantsIn(today), 'plant')}</small>}
      </h2>
      {today.length === 0 ? (
        <p className={styles.none}>None is left.</p>
      ) : (
        <>
          <Lines groups={today.slice(0, IN_SIGHT)} rows={rows} onSettled={onSettled} />
          {rest.length > 0 && (
            <details className={styles.later}>
              <summary>
                {rest.length} more for today
                <small>
                  {rest.map(({ key, what }) => (
                    <span key={key}>{what} </span>
                  ))}
                </small>
              </summary>
              <Lines groups={rest} rows={rows} onSettled={onSettled} />
            </details>
          )}
        </>
      )}
      {thisWeek.length > 0 && (
        <details className={styles.later}>
          <summary>Work to come this week: {countWords(plantsIn(thisWeek), 'plant')}</summary>
          <Lines groups={thisWeek} rows={rows} onSettled={onSettled} />
        </details>
      )}
      {settled.length > 0 && <SettledWork pieces={settled} />}
    </section>
  );
}

function Lines({
  groups,
  rows,
  onSettled,
}: {
  groups: readonly WorkGroup[];
  rows: readonly BenchRow[];
  onSettled: () => void;
}) {
  return (
    <ul className={styles.lines}>
      {groups.map((group) => (
        <WorkLine key={group.key} group={group} rows={rows} onSettled={onSettled} />
      ))}
    </ul>
  );
}
