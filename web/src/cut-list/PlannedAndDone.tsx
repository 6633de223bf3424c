import { Link } from 'wouter';
import type { CutList } from '../../../server/schemas/cuts.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import styles from './BallSection.module.css';

/** What became of the plan, by what later photos show; nothing before there are any. */
export function PlannedAndDone({
  list,
  sittings,
}: {
  list: CutList;
  sittings: readonly Pick<Sitting, 'id' | 'day'>[];
}) {
  const { worked } = list;
  if (!worked || worked.words === null) return null;
  const later = sittings.find(({ id }) => id === worked.comparedWith);
  return (
    <section aria-labelledby="worked-name" className={styles.section}>
      <h2 id="worked-name">Planned and done</h2>
      <p className={styles.words}>{worked.words}</p>
      {later && (
        <p>
          By the photos {later.id === list.sittingId ? 'taken after the work on' : 'of'}{' '}
          {dayWords(later.day, todayHere())}.{' '}
          {worked.standing.length > 0 && later.id !== list.sittingId && (
            <Link href={`/plants/${list.plantId}/cut-list?sitting=${later.id}`}>The list made from them</Link>
          )}
        </p>
      )}
    </section>
  );
}
