import buttons from '../parts/buttons.module.css';
import { Field } from '../parts/Field.tsx';
import { Icon } from '../parts/Icon.tsx';
import { LengthInput, typedUnit } from '../parts/LengthInput.tsx';
import styles from './ShowSheet.module.css';
import { type ClassDraft, emptyClass, LIMITS } from './show-draft.ts';

/** The classes of a show with the limits that matter; those left empty do not count. */
export function ClassFields({
  classes,
  fields,
  onChange,
}: {
  classes: readonly ClassDraft[];
  fields: Readonly<Record<string, string>>;
  onChange: (classes: readonly ClassDraft[]) => void;
}) {
  const set = (row: number, part: Partial<ClassDraft>) =>
    onChange(classes.map((one) => (one.row === row ? { ...one, ...part } : one)));
  return (
    <div className={styles.classes}>
      {classes.map((one, index) => (
        <fieldset key={one.row} className={styles.class}>
          <legend className="only-heard">Class {index + 1}</legend>
          <Field label={`Class ${index + 1}: number or name`} fault={fields[`classes/${index}/name`]}>
            {(wiring) => (
              <input
                {...wiring}
                value={one.name}
                autoComplete="off"
                onChange={(event) => set(one.row, { name: event.target.value })}
              />
            )}
          </Field>
          <div className={styles.limits}>
            {LIMITS.map(({ entry, field, label }) => (
              <Field
                key={entry}
                label={`${label}, ${typedUnit()}`}
                fault={fields[`classes/${index}/${field}`]}
              >
                {(wiring) => (
                  <LengthInput {...wiring} mm={one[entry]} onChange={(mm) => set(one.row, { [entry]: mm })} />
                )}
              </Field>
            ))}
          </div>
          <Field label="Rules of the class (may stay empty)" fault={fields[`classes/${index}/rules`]}>
            {(wiring) => (
              <input
                {...wiring}
                value={one.rules}
                onChange={(event) => set(one.row, { rules: event.target.value })}
              />
            )}
          </Field>
          <button
            type="button"
            className={buttons.quiet}
            onClick={() => onChange(classes.filter(({ row }) => row !== one.row))}
          >
            <Icon name="remove" /> Take class {index + 1} away
          </button>
        </fieldset>
      ))}
      <button
        type="button"
        className={buttons.quiet}
        onClick={() => onChange([...classes, emptyClass(classes)])}
      >
        <Icon name="add" /> Add a class
      </button>
    </div>
  );
}
