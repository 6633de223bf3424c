import { Link } from 'wouter';
import type { CutList } from '../../../server/schemas/cuts.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import styles from './BallSection.module.css';

/** What the photos do not show, and the way to see more of it. */
export function Unseen({
  unseen,
  plantId,
  from,
}: {
  unseen: CutList['unseen'];
  plantId: string;
  from: CutList['from'];
}) {
  if (unseen.length === 0) return null;
  return (
    <section aria-labelledby="unseen-name" className={styles.section}>
      <h2 id="unseen-name">What the photos do not show</h2>
      <ul className={styles.points}>
        {unseen.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
      {from === 'one-photo' && (
        <div className={buttons.row}>
          <Link href={`/plants/${plantId}/turned`} className={buttons.quiet}>
            <Icon name="turn" /> Photograph it from all round
          </Link>
        </div>
      )}
    </section>
  );
}
