import type { Day } from '../../../../core/day/day.ts';
import type { SeasonNoteRow } from '../../../../server/schemas/season-note.ts';
import { removeSeasonNote } from '../../api/season.ts';
import buttons from '../../parts/buttons.module.css';
import { Fault } from '../../parts/Fault.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { useSending } from '../../parts/use-sending.ts';
import { dayWords } from '../../words/day-words.ts';
import styles from './FigureMakeup.module.css';

/** Words on stretches of time that touch this plant: a cold dark winter, a warm spring. */
export function SeasonNotes({
  notes,
  today,
  onChange,
}: {
  notes: readonly SeasonNoteRow[];
  today: Day;
  onChange: (note: SeasonNoteRow) => void;
}) {
  const { busy, fault, send } = useSending();
  if (notes.length === 0) return null;
  return (
    <div>
      <h3 className={styles.name}>Words on seasons</h3>
      {fault !== null && <Fault fault={fault} />}
      <ul className={styles.records}>
        {notes.map((note) => (
          <li key={note.id} className={styles.note}>
            <p>
              {dayWords(note.fromDay, today)} to {dayWords(note.toDay, today)}
              {note.plantId === null && ', all plants'}: {note.text}{' '}
              <span className={styles.sub}>
                {note.setsAside
                  ? 'Records that it touches do not count.'
                  : 'Shown beside the records it touches.'}
              </span>
            </p>
            <span className={styles.acts}>
              <button type="button" className={buttons.icon} onClick={() => onChange(note)}>
                <Icon name="edit" />
                <span className="only-heard">Change: {note.text}</span>
              </button>
              <button
                type="button"
                className={buttons.icon}
                disabled={busy}
                onClick={() => send(() => removeSeasonNote(note.id))}
              >
                <Icon name="remove" />
                <span className="only-heard">Remove: {note.text}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
