import { type FormEvent, useState } from 'react';
import type { Day } from '../../../../core/day/day.ts';
import type { OwnWorkForm, OwnWorkRow } from '../../../../server/schemas/work.ts';
import { saveOwnWork } from '../../api/season.ts';
import { Choices } from '../../parts/Choices.tsx';
import { Fault } from '../../parts/Fault.tsx';
import { Field } from '../../parts/Field.tsx';
import forms from '../../parts/forms.module.css';
import { KeepOrCancel } from '../../parts/KeepOrCancel.tsx';
import Sheet from '../../parts/Sheet.tsx';
import { useSending } from '../../parts/use-sending.ts';

const KINDS = [
  { value: 'feed', words: 'Feed' },
  { value: 'pot-on', words: 'Pot on' },
  { value: 'own', words: 'Anything else' },
] as const;

/** Sets work of the grower's own: once, or coming round. */
export default function OwnWorkSheet({
  plantId,
  own,
  today,
  onClose,
}: {
  plantId: string;
  own: OwnWorkRow | null;
  today: Day;
  onClose: () => void;
}) {
  const [kind, setKind] = useState<OwnWorkForm['kind']>(own?.kind ?? 'feed');
  const [text, setText] = useState(own?.text ?? '');
  const [day, setDay] = useState<string>(own?.day ?? today);
  const [every, setEvery] = useState(own?.everyDays == null ? '' : String(own.everyDays));
  const [until, setUntil] = useState<string>(own?.untilDay ?? '');
  const [unread, setUnread] = useState<string>();
  const { busy, fault, fields, send } = useSending();

  async function save(event: FormEvent) {
    event.preventDefault();
    const days = every.trim() === '' ? null : Number(every);
    const wrong = days !== null && !(Number.isInteger(days) && days >= 1 && days <= 365);
    setUnread(wrong ? 'Give whole days from 1 to 365, for example 7; or leave it empty.' : undefined);
    if (wrong) return;
    // The server reads the days and says which it cannot.
    const form = { kind, text, day, everyDays: days, untilDay: until === '' ? null : until };
    if (await send(() => saveOwnWork(plantId, own?.id ?? null, form as OwnWorkForm))) onClose();
  }

  return (
    <Sheet title={own === null ? 'Add work of your own' : 'Change your own work'} onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <Choices legend="Kind" options={KINDS} chosen={kind} onChoose={setKind} />
        <Field
          label="What is to be done"
          help={
            kind === 'feed'
              ? 'Read the label of what you feed, and write down what you settle on.'
              : undefined
          }
          fault={fields.text}
        >
          {(wiring) => <input {...wiring} value={text} onChange={(event) => setText(event.target.value)} />}
        </Field>
        <Field label="Day" fault={fields.day}>
          {(wiring) => (
            <input {...wiring} type="date" value={day} onChange={(event) => setDay(event.target.value)} />
          )}
        </Field>
        <Field
          label="Comes round every so many days (may stay empty)"
          help="Empty: once."
          fault={unread ?? fields.everyDays}
        >
          {(wiring) => (
            <input
              {...wiring}
              inputMode="numeric"
              value={every}
              onChange={(event) => setEvery(event.target.value)}
            />
          )}
        </Field>
        <Field label="Until (may stay empty)" fault={fields.untilDay}>
          {(wiring) => (
            <input {...wiring} type="date" value={until} onChange={(event) => setUntil(event.target.value)} />
          )}
        </Field>
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
    </Sheet>
  );
}
