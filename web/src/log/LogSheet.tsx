import { type FormEvent, useState } from 'react';
import { LOG_KINDS, LOG_WORDS, type LogKind } from '../../../core/season/log-entry.ts';
import type { Note, Stop } from '../../../server/schemas/sitting.ts';
import { type DiaryKind, saveEntry } from '../api/diary.ts';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { todayHere } from '../words/day-words.ts';
import { STOP_MEANINGS, STOP_WORDS } from '../words/plant-words.ts';

/** Writes down or changes one stop, or one line of the log in words. */
export default function LogSheet({
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
  const [what, setWhat] = useState<LogKind>(entry && 'kind' in entry ? entry.kind : 'note');
  const [words, setWords] = useState(entry ? ('text' in entry ? entry.text : entry.note) : '');
  const { busy, fault, fields, send } = useSending();
  const isBare = isStop || what !== 'note';

  async function save(event: FormEvent) {
    event.preventDefault();
    const form: Record<string, string> = isStop
      ? { day, depth, note: words }
      : { day, kind: what, text: words };
    if (await send(() => saveEntry(plantId, kind, entry?.id ?? null, form))) onClose();
  }

  return (
    <Sheet title={titleOf(isStop, entry !== null)} onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <Field label="Day" fault={fields.day}>
          {(wiring) => (
            <input {...wiring} type="date" value={day} onChange={(event) => setDay(event.target.value)} />
          )}
        </Field>
        {isStop ? (
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
        ) : (
          <Field label="What" fault={fields.kind}>
            {(wiring) => (
              <select {...wiring} value={what} onChange={(event) => setWhat(event.target.value as LogKind)}>
                {['note' as const, ...LOG_KINDS.filter((one) => one !== 'note')].map((one) => (
                  <option key={one} value={one}>
                    {LOG_WORDS[one]}
                  </option>
                ))}
              </select>
            )}
          </Field>
        )}
        <Field label={isBare ? 'Note (may stay empty)' : 'Note'} fault={fields.text ?? fields.note}>
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

function titleOf(isStop: boolean, isThere: boolean): string {
  if (isStop) return isThere ? 'Change the stop' : 'Write down a stop';
  return isThere ? 'Change the line' : 'Write in the log';
}
