import { type FormEvent, useState } from 'react';
import type { Note, Stop } from '../../../server/schemas/sitting.ts';
import { type DiaryKind, saveEntry } from '../api/changes.ts';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { todayHere } from '../words/day-words.ts';
import { STOP_MEANINGS, STOP_WORDS } from '../words/plant-words.ts';

/** Writes down or changes one stop or one note. */
export default function EntrySheet({
  plantId,
  kind,
  entry,
  onClose,
}: {
  plantId: string;
  kind: DiaryKind;
  entry: Stop | Note | null;
  onClose: () => void;
}) {
  const isStop = kind === 'stops';
  const [day, setDay] = useState<string>(entry?.day ?? todayHere());
  const [depth, setDepth] = useState<Stop['depth']>(entry && 'depth' in entry ? entry.depth : 'tip');
  const [words, setWords] = useState(entry ? ('text' in entry ? entry.text : entry.note) : '');
  const { busy, fault, fields, send } = useSending();
  const thing = isStop ? 'stop' : 'note';

  async function save(event: FormEvent) {
    event.preventDefault();
    const form: Record<string, string> = isStop ? { day, depth, note: words } : { day, text: words };
    if (await send(() => saveEntry(plantId, kind, entry?.id ?? null, form))) onClose();
  }

  return (
    <Sheet title={entry ? `Change the ${thing}` : `Write down a ${thing}`} onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <Field label="Day" fault={fields.day}>
          {(wiring) => (
            <input {...wiring} type="date" value={day} onChange={(event) => setDay(event.target.value)} />
          )}
        </Field>
        {isStop && (
          <fieldset className={forms.choices}>
            <legend>Which stop</legend>
            {(['tip', 'deep'] as const).map((one) => (
              <label key={one}>
                <input type="radio" name="depth" checked={depth === one} onChange={() => setDepth(one)} />
                <span>
                  <b>{STOP_WORDS[one]}.</b> {STOP_MEANINGS[one]}
                </span>
              </label>
            ))}
          </fieldset>
        )}
        <Field label={isStop ? 'Note (may stay empty)' : 'Note'} fault={fields.text ?? fields.note}>
          {(wiring) => (
            <textarea {...wiring} value={words} onChange={(event) => setWords(event.target.value)} />
          )}
        </Field>
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
    </Sheet>
  );
}
