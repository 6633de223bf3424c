import type { ShowList } from '../../../server/schemas/show.ts';
import { removeShow } from '../api/shows.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { dayWords, showWords, todayHere } from '../words/day-words.ts';
import { EntryLine } from './EntryLine.tsx';
import styles from './ShowCard.module.css';
import type { OpenedSheet } from './ShowsScreen.tsx';
import { limitsInWords } from './show-words.ts';

/** One show: when and where, its classes and rules, and the plants entered. */
export function ShowCard({
  listed,
  onOpen,
}: {
  listed: ShowList['shows'][number];
  onOpen: (sheet: OpenedSheet) => void;
}) {
  const { show, isOver, entries } = listed;
  const { busy, fault, send } = useSending();
  const today = todayHere();
  return (
    <article className={styles.card} aria-labelledby={`show-${show.id}`}>
      <header className={styles.head}>
        <div>
          <h3 id={`show-${show.id}`} translate="no">
            {show.name}
          </h3>
          <p>
            <b>{dayWords(show.day, today)}</b>, {showWords(show.day, today)}
          </p>
          {show.place !== '' && (
            <p className={styles.sub} translate="no">
              {show.place}
            </p>
          )}
        </div>
        <div className={styles.acts}>
          <button type="button" className={buttons.icon} onClick={() => onOpen({ name: 'show', show })}>
            <Icon name="edit" />
            <span className="only-heard">Change {show.name}</span>
          </button>
          <button
            type="button"
            className={buttons.icon}
            disabled={busy}
            onClick={() => send(() => removeShow(show))}
          >
            <Icon name="remove" />
            <span className="only-heard">Remove {show.name}</span>
          </button>
        </div>
      </header>
      {fault !== null && <Fault fault={fault} />}
      {entries.length === 0 ? (
        <p className={styles.sub}>No plant is entered.</p>
      ) : (
        <ul className={styles.entries} aria-label={`Plants entered for ${show.name}`}>
          {entries.map((entry) => (
            <EntryLine
              key={entry.plantId}
              show={show}
              entry={entry}
              isOver={isOver}
              onChange={() => onOpen({ name: 'entry', show, entry, plantName: entry.plantName, isOver })}
            />
          ))}
        </ul>
      )}
      <div className={buttons.row}>
        <button
          type="button"
          className={buttons.quiet}
          onClick={() => onOpen({ name: 'enter', show, enteredIds: entries.map(({ plantId }) => plantId) })}
        >
          <Icon name="add" /> Enter a plant<span className="only-heard"> for {show.name}</span>
        </button>
      </div>
      <Schedule listed={listed} />
    </article>
  );
}

/** Classes with their limits, and the rules as copied from the schedule. */
function Schedule({ listed: { show } }: { listed: ShowList['shows'][number] }) {
  const { classes, rules } = show;
  if (classes.length === 0 && rules === '') {
    return <p className={styles.sub}>No classes and no rules are written down yet.</p>;
  }
  return (
    <details className={styles.schedule}>
      <summary>Classes and rules</summary>
      {classes.length > 0 && (
        <ul className={styles.classes}>
          {classes.map((one) => (
            <li key={one.id}>
              <b translate="no">{one.name}.</b> {limitsInWords(one) ?? 'No limits'}.{' '}
              <span translate="no">{one.rules}</span>
            </li>
          ))}
        </ul>
      )}
      {rules !== '' && (
        <p className={styles.rules} translate="no">
          {rules}
        </p>
      )}
      <p className={styles.sub}>The show’s own schedule decides.</p>
    </details>
  );
}
