import type { View } from '../../../server/schemas/sitting.ts';
import { measureAnew } from '../api/corrections.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { notesUnderPhoto } from '../photo/day-notes.ts';
import styles from './PhotoTrouble.module.css';

/** Why this photo has no answer (yet); stands over the photo. Nothing when it was measured. */
export function PhotoTrouble({ plantId, view }: { plantId: string; view: View }) {
  const { busy, fault, send } = useSending();
  if (view.state === 'received' || view.state === 'measuring') {
    return (
      <p role="status" className={styles.busy}>
        <span className={styles.ring} aria-hidden="true" />
        {view.state === 'received' ? 'Received. It waits its turn to be measured.' : 'Being measured…'}
      </p>
    );
  }
  if (view.state === 'failed') {
    return (
      <div className={styles.trouble}>
        <p>{view.failure ?? 'The measuring stopped part-way. The photo is safe.'}</p>
        <button
          type="button"
          className={buttons.quiet}
          disabled={busy}
          onClick={() => send(() => measureAnew(plantId, view.id))}
        >
          <Icon name="again" /> Measure it anew
        </button>
        {fault !== null && <Fault fault={fault} />}
      </div>
    );
  }
  if (!view.report?.hint) return null;
  return (
    <div className={styles.trouble}>
      <p>
        <b>Not measured.</b> {view.report.hint}
      </p>
    </div>
  );
}

/** What the measuring could not know about this photo, and why. */
export function PhotoNotes({ view }: { view: View }) {
  const notes = notesUnderPhoto(view.report?.notes ?? []);
  if (notes.length === 0) return null;
  return (
    <ul className={styles.notes}>
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
}
