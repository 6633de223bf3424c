import type { EarlierSitting } from '../../../server/schemas/pages.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { Field } from '../parts/Field.tsx';
import { agoWords, dayWords, todayHere } from '../words/day-words.ts';
import { countWords } from '../words/plant-words.ts';
import styles from './CutListScreen.module.css';

/** Which sitting the list is made from. */
export function SittingChoice({
  sittings,
  chosen,
  onChoose,
}: {
  sittings: readonly (Sitting | EarlierSitting)[];
  chosen: Sitting;
  onChoose: (sittingId: string) => void;
}) {
  const today = todayHere();
  const words = ({ day, views }: Sitting | EarlierSitting) =>
    `${dayWords(day, today)}, ${agoWords(day, today)}${views.length > 1 ? `, ${countWords(views.length, 'view')}` : ''}`;
  if (sittings.length === 1) return <p className={styles.from}>Photos of {words(chosen)}</p>;
  return (
    <div className={styles.from}>
      <Field label="From the photos of">
        {(wiring) => (
          <select {...wiring} value={chosen.id} onChange={(event) => onChoose(event.target.value)}>
            {sittings.map((sitting) => (
              <option key={sitting.id} value={sitting.id}>
                {words(sitting)}
              </option>
            ))}
          </select>
        )}
      </Field>
    </div>
  );
}
