import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import styles from './StandSteps.module.css';
import type { StepProps } from './StandSteps.tsx';

const USUAL = ['Dark plain cloth', 'Light plain cloth', 'Plain wall or board'] as const;

/** What is behind the plant: offered in words, and free to be said otherwise. */
export function BackdropStep({ draft, fields, onChange }: StepProps) {
  const usual = USUAL.find((words) => words === draft.backdrop);
  const set = (backdrop: string) => onChange({ ...draft, backdrop });
  return (
    <div className={styles.entries}>
      <div className={styles.entry}>
        <BackdropDrawing />
        <ol className={styles.todo}>
          <li>Hang something plain behind the plant, wider and higher than the plant will ever be.</li>
          <li>No green, and no colour that the flowers have. Dark cloth suits most plants.</li>
          <li>Leave a hand’s breadth or two between plant and cloth, so that no shadow falls on it.</li>
          <li>Leave it as it is all season.</li>
        </ol>
      </div>
      <div className={styles.entry}>
        <fieldset className={forms.choices}>
          <legend>Behind the plant</legend>
          {USUAL.map((words) => (
            <label key={words}>
              <input type="radio" name="backdrop" checked={usual === words} onChange={() => set(words)} />
              {words}
            </label>
          ))}
        </fieldset>
        <Field
          label="Or in your own words (may stay empty)"
          help="Anything else works, too, as long as it stays. A plain one gives the surest outline."
          fault={fields.backdrop}
        >
          {(wiring) => (
            <input
              {...wiring}
              value={usual ? '' : draft.backdrop}
              placeholder="for example the shed wall"
              onChange={(event) => set(event.target.value)}
            />
          )}
        </Field>
      </div>
    </div>
  );
}

function BackdropDrawing() {
  return (
    <svg
      viewBox="0 0 340 176"
      className={styles.drawing}
      role="img"
      aria-label="From the camera: a plain cloth, wider and higher than the plant, behind it."
    >
      <path d="M70 14h200v120H70z" fill="var(--sunk)" className={styles.act} />
      <path d="M20 146h300" />
      <path d="M150 112h40l-5 34h-30z" fill="var(--ground)" />
      <circle cx="170" cy="76" r="38" fill="var(--ground)" />
      <path
        d="M128 76H84M90 71l-6 5 6 5M212 76h44M250 71l6 5-6 5M170 34V22M165 28l5-6 5 6"
        className={styles.act}
      />
    </svg>
  );
}
