import type { Show } from '../../../core/season/show.ts';
import { Field } from '../parts/Field.tsx';
import { limitsInWords } from './show-words.ts';

/** In which class of a show; none while that is open. */
export function ClassField({
  show,
  classId,
  fault,
  onChoose,
}: {
  show: Show;
  classId: string | null;
  fault: string | undefined;
  onChoose: (classId: string | null) => void;
}) {
  if (show.classes.length === 0) {
    return <p>This show has no classes yet. Add them by changing the show.</p>;
  }
  const chosen = show.classes.find(({ id }) => id === classId);
  const limits = chosen && limitsInWords(chosen);
  return (
    <Field label="Class" help={limits ? `${limits}.` : undefined} fault={fault}>
      {(wiring) => (
        <select {...wiring} value={classId ?? ''} onChange={(event) => onChoose(event.target.value || null)}>
          <option value="">Not settled yet</option>
          {show.classes.map(({ id, name }) => (
            <option key={id} value={id} translate="no">
              {name}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
