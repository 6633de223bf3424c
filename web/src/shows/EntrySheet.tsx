import { type FormEvent, useState } from 'react';
import type { Show } from '../../../core/season/show.ts';
import type { EntryRow } from '../../../server/schemas/show.ts';
import { changeEntry, withdrawPlant } from '../api/shows.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import { Icon } from '../parts/Icon.tsx';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { ClassField } from './ClassField.tsx';

/** Changes the class of an entry, notes what happened on the day, or withdraws the plant. */
export default function EntrySheet({
  show,
  entry,
  plantName,
  isOver,
  onClose,
}: {
  show: Show;
  entry: EntryRow;
  plantName: string;
  isOver: boolean;
  onClose: () => void;
}) {
  const [classId, setClass] = useState(entry.classId);
  const [result, setResult] = useState(entry.result);
  const { busy, fault, fields, send } = useSending();

  async function save(event: FormEvent) {
    event.preventDefault();
    if (await send(() => changeEntry(entry, { classId, result }))) onClose();
  }

  async function withdraw() {
    const words = `${plantName} is withdrawn from ${show.name}.`;
    if (await send(() => withdrawPlant(entry, words))) onClose();
  }

  return (
    <Sheet title={`${plantName} at ${show.name}`} onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <ClassField show={show} classId={classId} fault={fields.classId} onChoose={setClass} />
        <Field
          label={isOver ? 'What happened on the day' : 'What happened on the day (after the show)'}
          help="Placing, the judge’s words, how it stood."
          fault={fields.result}
        >
          {(wiring) => (
            <textarea {...wiring} value={result} onChange={(event) => setResult(event.target.value)} />
          )}
        </Field>
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
      <div className={forms.part}>
        <button type="button" className={buttons.quiet} disabled={busy} onClick={withdraw}>
          <Icon name="remove" /> Withdraw it from this show
        </button>
      </div>
    </Sheet>
  );
}
