import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Note, Stop } from '../../../server/schemas/sitting.ts';
import { type DiaryKind, removeEntry } from '../api/changes.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import { STOP_MEANINGS, STOP_WORDS } from '../words/plant-words.ts';
import styles from './Diary.module.css';
import type { SheetName } from './PlantSheets.tsx';

type Entry = { kind: 'stops'; entry: Stop } | { kind: 'notes'; entry: Note };

/** The grower's own record: stops and notes, newest first. */
export function Diary({ page, onOpen }: { page: PlantPage; onOpen: (sheet: SheetName) => void }) {
  const { busy, fault, send } = useSending();
  const today = todayHere();
  const entries: Entry[] = [
    ...page.stops.map((entry): Entry => ({ kind: 'stops', entry })),
    ...page.notes.map((entry): Entry => ({ kind: 'notes', entry })),
  ].sort((a, b) => (a.entry.day < b.entry.day ? 1 : -1));
  const open = (kind: DiaryKind, entry: Stop | Note | null) =>
    onOpen({ name: 'entry', kind, entry } as SheetName);

  return (
    <section aria-labelledby="diary-name">
      <h2 id="diary-name">Stops and notes</h2>
      <div className={`${buttons.row} ${styles.add}`}>
        <button type="button" className={buttons.quiet} onClick={() => open('stops', null)}>
          <Icon name="shorten" /> Write down a stop
        </button>
        <button type="button" className={buttons.quiet} onClick={() => open('notes', null)}>
          <Icon name="edit" /> Write a note
        </button>
      </div>
      {fault !== null && <Fault fault={fault} />}
      {entries.length === 0 && <p className={styles.none}>Nothing is written down yet.</p>}
      <ul className={styles.list}>
        {entries.map((one) => (
          <li key={one.entry.id} className={styles.entry}>
            <p className={styles.day}>{dayWords(one.entry.day, today)}</p>
            <EntryWords {...one} />
            <div className={styles.acts}>
              <button type="button" className={buttons.icon} onClick={() => open(one.kind, one.entry)}>
                <Icon name="edit" />
                <span className="only-heard">Change this {one.kind === 'stops' ? 'stop' : 'note'}</span>
              </button>
              <button
                type="button"
                className={buttons.icon}
                disabled={busy}
                onClick={() => send(() => removeEntry(page.plant.id, one.kind, one.entry.id))}
              >
                <Icon name="remove" />
                <span className="only-heard">Remove this {one.kind === 'stops' ? 'stop' : 'note'}</span>
              </button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

function EntryWords(one: Entry) {
  if (one.kind === 'notes') return <p className={styles.words}>{one.entry.text}</p>;
  return (
    <p className={styles.words}>
      <b>{STOP_WORDS[one.entry.depth]}.</b> {one.entry.note || STOP_MEANINGS[one.entry.depth]}
    </p>
  );
}
