import { type FormEvent, useState } from 'react';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { leaveSittingOut } from '../api/log.ts';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import { LEFT_OUT_REASONS, LIMP } from '../words/left-out-words.ts';

/** Keeps a sitting out of trend and advice, and says why. */
export default function LeaveOutSheet({ sitting, onClose }: { sitting: Sitting; onClose: () => void }) {
  const [reason, setReason] = useState<string | null>(LIMP);
  const [words, setWords] = useState('');
  const { busy, fault, fields, send } = useSending();
  const isMany = sitting.views.length > 1;

  async function save(event: FormEvent) {
    event.preventDefault();
    if (await send(() => leaveSittingOut(sitting, reason ?? words))) onClose();
  }

  return (
    <Sheet title="Leave this sitting out" onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <p>
          {isMany ? `All ${sitting.views.length} photos` : 'The photo'} of{' '}
          {dayWords(sitting.day, todayHere())} will not count in the trend, and no advice rests on{' '}
          {isMany ? 'them' : 'it'}. Nothing is removed.
        </p>
        <fieldset className={forms.choices}>
          <legend>Why</legend>
          {LEFT_OUT_REASONS.map((one) => (
            <label key={one}>
              <input type="radio" name="why" checked={reason === one} onChange={() => setReason(one)} />
              {one.charAt(0).toUpperCase() + one.slice(1)}
            </label>
          ))}
          <label>
            <input type="radio" name="why" checked={reason === null} onChange={() => setReason(null)} />
            In your own words
          </label>
        </fieldset>
        {reason === null && (
          <Field label="Reason" fault={fields.leftOut}>
            {(wiring) => (
              <input {...wiring} value={words} onChange={(event) => setWords(event.target.value)} />
            )}
          </Field>
        )}
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
    </Sheet>
  );
}
