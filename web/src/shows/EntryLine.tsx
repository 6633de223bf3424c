import { Link } from 'wouter';
import type { Show } from '../../../core/season/show.ts';
import type { ShowList } from '../../../server/schemas/show.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { CheckList } from './CheckList.tsx';
import styles from './ShowCard.module.css';

type Listed = ShowList['shows'][number];

/** A plant entered for a show: its class, what the class says of it now, what happened. */
export function EntryLine({
  show,
  entry,
  isOver,
  onChange,
}: {
  show: Show;
  entry: Listed['entries'][number];
  isOver: boolean;
  onChange: () => void;
}) {
  const className = show.classes.find(({ id }) => id === entry.classId)?.name;
  return (
    <li className={styles.entry}>
      <div className={styles.words}>
        <p>
          <Link href={`/plants/${entry.plantId}`} className={styles.plant} translate="no">
            {entry.plantName}
          </Link>
          {className ? (
            <span translate="no">, {className}</span>
          ) : (
            show.classes.length > 0 && ', class not settled yet'
          )}
        </p>
        {!isOver && !entry.isAim && (
          <p className={styles.sub}>
            Its stops are planned for another show; its own page says what that does here.
          </p>
        )}
        <CheckList checks={entry.checks} />
        {entry.result !== '' && (
          <p className={styles.result}>
            <b>On the day:</b> <span translate="no">{entry.result}</span>
          </p>
        )}
      </div>
      <button type="button" className={buttons.quiet} onClick={onChange}>
        <Icon name="edit" /> {isOver ? (entry.result === '' ? 'Note the result' : 'Change') : 'Class'}
        <span className="only-heard">
          {' '}
          of {entry.plantName} at {show.name}
        </span>
      </button>
    </li>
  );
}
