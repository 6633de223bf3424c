import buttons from '../parts/buttons.module.css';
import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import { Icon } from '../parts/Icon.tsx';
import { lengthEntryOf } from './length-entry.ts';
import choices from './ScaleStep.module.css';
import styles from './StandSteps.module.css';
import type { StepProps } from './StandSteps.tsx';

const WAYS = [
  {
    from: 'sheet',
    name: 'The stand sheet',
    says: 'A page you print. Its ring marks give frame, millimetres, camera distance and grey balance by themselves. The surest.',
  },
  {
    from: 'rim',
    name: 'The pot rim',
    says: 'Each plant’s own rim, measured across its outside. Good millimetres; the frame is found by what stands still.',
  },
  {
    from: 'none',
    name: 'Nothing yet',
    says: 'Shapes and scores only, no millimetres, unless a plant’s rim is known.',
  },
] as const;

/** What gives the millimetres: the sheet, the rim, or nothing. */
export function ScaleStep({ draft, fields, onChange }: StepProps) {
  return (
    <div className={styles.entries}>
      <fieldset className={`${forms.choices} ${choices.ways}`}>
        <legend>The millimetres come from</legend>
        {WAYS.map(({ from, name, says }) => (
          <label key={from} className={choices.way}>
            <input
              type="radio"
              name="scale-from"
              checked={draft.scaleFrom === from}
              onChange={() => onChange({ ...draft, scaleFrom: from })}
            />
            <span>
              <b>{name}</b>
              <br />
              {says}
            </span>
          </label>
        ))}
        {fields.scaleFrom && <p className={choices.fault}>{fields.scaleFrom}</p>}
      </fieldset>
      {draft.scaleFrom === 'sheet' && <SheetEntries {...{ draft, fields, onChange }} />}
      {draft.scaleFrom === 'rim' && (
        <p>
          Give each plant’s rim on its page, under Details. One millimetre wrong on a 130 mm rim makes all
          sizes 0.8 % wrong.
        </p>
      )}
    </div>
  );
}

function SheetEntries({ draft, fields, onChange }: StepProps) {
  return (
    <div className={styles.entry}>
      {/* Another page, so that nothing typed here is lost. */}
      <a
        href={`/stand-sheet?paper=${draft.paper}`}
        target="_blank"
        rel="noreferrer"
        className={buttons.quiet}
      >
        <Icon name="sheet" /> See and print the sheet
      </a>
      <Field label="Paper" fault={fields.sheet}>
        {(wiring) => (
          <select
            {...wiring}
            value={draft.paper}
            onChange={(event) => onChange({ ...draft, paper: event.target.value as 'A4' | 'Letter' })}
          >
            <option value="A4">A4, 210 × 297 mm</option>
            <option value="Letter">Letter, 216 × 279 mm</option>
          </select>
        )}
      </Field>
      <fieldset className={forms.choices}>
        <legend>Where it is</legend>
        {(
          [
            ['backdrop', 'On the backdrop behind the plant, flat and upright'],
            ['bench', 'Flat on the bench, under or before the pot'],
          ] as const
        ).map(([place, words]) => (
          <label key={place}>
            <input
              type="radio"
              name="sheet-place"
              checked={draft.sheetPlace === place}
              onChange={() => onChange({ ...draft, sheetPlace: place })}
            />
            {words}
          </label>
        ))}
      </fieldset>
      <p>Leave it where the plant will not hide it: beside the canopy, or above it.</p>
      <Field
        label={`Middle of the pot before the sheet, ${draft.tape}`}
        help="From the sheet towards the camera. What stands nearer reads larger, so this distance is needed for true millimetres."
        fault={fields.plantInFrontMm ?? fields['sheet/plantInFrontMm']}
      >
        {(wiring) => (
          <input
            {...wiring}
            inputMode="decimal"
            value={draft.plantInFront}
            placeholder={`for example ${lengthEntryOf(150, draft.tape)}`}
            onChange={(event) => onChange({ ...draft, plantInFront: event.target.value })}
          />
        )}
      </Field>
    </div>
  );
}
