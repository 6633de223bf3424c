import type { PhotoReport } from '../../../core/report.ts';
import { notesUnderPhoto } from '../photo/day-notes.ts';
import { isDoubtful, SURE_MEANING, sureWords } from '../photo/outline-words.ts';
import styles from './ScoreRow.module.css';

/** How sure the outline is that every number rests on; a doubtful one shows at once why, and what would help. */
export function OutlineRow({ report }: { report: PhotoReport }) {
  const { confidence } = report;
  const notes = notesUnderPhoto(report.notes);
  const doubtful = isDoubtful(confidence);
  return (
    <div className={styles.row}>
      <details>
        <summary className={styles.summary}>
          <span className={styles.name}>Outline</span>
          {confidence === null ? (
            <span className={styles.unknown}>not known how sure</span>
          ) : (
            <span className={styles.sure}>{sureWords(confidence)}</span>
          )}
        </summary>
        <div className={styles.meaning}>
          <p>{SURE_MEANING}</p>
          <p>Every number rests on the outline, and its plus-minus holds what the outline leaves open.</p>
        </div>
      </details>
      {doubtful && notes.length > 0 && (
        <ul className={styles.why}>
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
