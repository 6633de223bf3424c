import { type FormEvent, useState } from 'react';
import { addDays, day as dayOf, isDay } from '../../../../core/day/day.ts';
import type { Said } from '../../api/work-words.ts';
import { Choices } from '../../parts/Choices.tsx';
import { Fault } from '../../parts/Fault.tsx';
import { Field } from '../../parts/Field.tsx';
import forms from '../../parts/forms.module.css';
import { KeepOrCancel } from '../../parts/KeepOrCancel.tsx';
import Sheet from '../../parts/Sheet.tsx';
import { todayHere } from '../../words/day-words.ts';
import type { NamedPiece } from './work-groups.ts';
import { namesInWords } from './work-words.ts';

const WAYS = [
  { value: 'moved', words: 'Move it' },
  { value: 'skipped', words: 'Skip it' },
] as const;

/** Moves work to another day, or skips it and says why. */
export default function MoveOrSkipSheet({
  pieces,
  busy,
  fault,
  onClose,
  onSay,
}: {
  pieces: readonly NamedPiece[];
  busy: boolean;
  fault: unknown;
  onClose: () => void;
  onSay: (said: Said) => Promise<void>;
}) {
  const today = todayHere();
  const [way, setWay] = useState<'moved' | 'skipped'>('moved');
  const [day, setDay] = useState<string>(addDays(today, 1));
  const [reason, setReason] = useState('');
  const [missing, setMissing] = useState<string>();

  async function keep(event: FormEvent) {
    event.preventDefault();
    if (way === 'moved' && !isDay(day)) return setMissing('Choose a day.');
    if (way === 'skipped' && reason.trim() === '') return setMissing('Say why, for example “still wet”.');
    setMissing(undefined);
    await onSay(
      way === 'moved' ? { said: way, day: dayOf(day) } : { said: way, day: today, reason: reason.trim() },
    );
  }

  return (
    <Sheet title="Move or skip" onClose={onClose}>
      <form className={forms.form} onSubmit={keep} noValidate>
        <p>
          <b>{pieces[0]?.what}</b> {namesInWords(pieces)}
        </p>
        <Choices legend="Move or skip" legendHidden options={WAYS} chosen={way} onChoose={setWay} />
        {way === 'moved' ? (
          <Field label="To which day" fault={missing}>
            {(wiring) => (
              <input {...wiring} type="date" value={day} onChange={(event) => setDay(event.target.value)} />
            )}
          </Field>
        ) : (
          <Field label="Why" help="It is kept with the plant’s season." fault={missing}>
            {(wiring) => (
              <input {...wiring} value={reason} onChange={(event) => setReason(event.target.value)} />
            )}
          </Field>
        )}
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
    </Sheet>
  );
}
