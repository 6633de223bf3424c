import { Field } from '../parts/Field.tsx';
import styles from './AddPhotosSheet.module.css';

/** The day of photos that are not from today, where the camera's own is wrong or missing. */
export function OtherDay({ day, onChange }: { day: string; onChange: (day: string) => void }) {
  return (
    <details className={styles.more}>
      <summary>The photos are from another day</summary>
      <Field
        label="Day they were taken"
        help="Only needed when the camera’s own day is wrong or missing. It holds for the photos you add next."
      >
        {(wiring) => (
          <input {...wiring} type="date" value={day} onChange={(event) => onChange(event.target.value)} />
        )}
      </Field>
    </details>
  );
}
