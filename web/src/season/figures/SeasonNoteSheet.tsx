import { type FormEvent, useState } from 'react';
import { addDays, type Day } from '../../../../core/day/day.ts';
import type { Plant } from '../../../../server/schemas/plant.ts';
import type { SeasonNoteForm, SeasonNoteRow } from '../../../../server/schemas/season-note.ts';
import { saveSeasonNote } from '../../api/season.ts';
import { Choices } from '../../parts/Choices.tsx';
import { Fault } from '../../parts/Fault.tsx';
import { Field } from '../../parts/Field.tsx';
import forms from '../../parts/forms.module.css';
import { KeepOrCancel } from '../../parts/KeepOrCancel.tsx';
import Sheet from '../../parts/Sheet.tsx';
import { useSending } from '../../parts/use-sending.ts';

/** A stretch of some weeks to begin with. */
const USUAL_DAYS = 60;

/** Says what a stretch of time was like, and whether records that it touches count. */
export default function SeasonNoteSheet({
  plant,
  note,
  today,
  onClose,
}: {
  plant: Plant;
  note: SeasonNoteRow | null;
  today: Day;
  onClose: () => void;
}) {
  const [fromDay, setFrom] = useState<string>(note?.fromDay ?? addDays(today, -USUAL_DAYS));
  const [toDay, setTo] = useState<string>(note?.toDay ?? today);
  const [text, setText] = useState(note?.text ?? '');
  const [whose, setWhose] = useState<'one' | 'all'>(note?.plantId === null ? 'all' : 'one');
  const [setsAside, setAside] = useState(note?.setsAside ?? false);
  const { busy, fault, fields, send } = useSending();

  async function save(event: FormEvent) {
    event.preventDefault();
    // The server reads the days and says which it cannot.
    const form = { plantId: whose === 'all' ? null : plant.id, fromDay, toDay, text, setsAside };
    if (await send(() => saveSeasonNote(note?.id ?? null, form as SeasonNoteForm))) onClose();
  }

  return (
    <Sheet title="A word on a season" onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <Field label="What it was like" help="For example: a cold, dark winter." fault={fields.text}>
          {(wiring) => (
            <textarea {...wiring} value={text} onChange={(event) => setText(event.target.value)} />
          )}
        </Field>
        <Field label="From" fault={fields.fromDay}>
          {(wiring) => (
            <input
              {...wiring}
              type="date"
              value={fromDay}
              onChange={(event) => setFrom(event.target.value)}
            />
          )}
        </Field>
        <Field label="To" fault={fields.toDay}>
          {(wiring) => (
            <input {...wiring} type="date" value={toDay} onChange={(event) => setTo(event.target.value)} />
          )}
        </Field>
        <Choices
          legend="For"
          options={[
            { value: 'one', words: plant.name },
            { value: 'all', words: 'All plants' },
          ]}
          chosen={whose}
          onChoose={setWhose}
        />
        <fieldset className={forms.choices}>
          <legend>Records of that time</legend>
          <label>
            <input type="checkbox" checked={setsAside} onChange={(event) => setAside(event.target.checked)} />
            Set them aside: the next plans learn nothing from them
          </label>
        </fieldset>
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
    </Sheet>
  );
}
