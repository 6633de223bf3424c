import { type FormEvent, useState } from 'react';
import { cuttingCaution } from '../../../../core/advice/cautions.ts';
import { isDay } from '../../../../core/day/day.ts';
import { LOG_KINDS, LOG_WORDS, type LogKind } from '../../../../core/season/log-entry.ts';
import { type RecordForMany, recordForMany } from '../../api/many.ts';
import { Fault } from '../../parts/Fault.tsx';
import { Field } from '../../parts/Field.tsx';
import forms from '../../parts/forms.module.css';
import { KeepOrCancel } from '../../parts/KeepOrCancel.tsx';
import Sheet from '../../parts/Sheet.tsx';
import { useSending } from '../../parts/use-sending.ts';
import { todayHere } from '../../words/day-words.ts';
import { STOP_MEANINGS, STOP_WORDS } from '../../words/plant-words.ts';
import type { BenchRow } from '../need-groups.ts';
import styles from './ManyBar.module.css';
import { doneWords, forWhom } from './many-words.ts';

type What = LogKind | 'tip' | 'deep';

const isStop = (what: What): what is 'tip' | 'deep' => what === 'tip' || what === 'deep';

/** One stop or log entry for all chosen plants: what, on which day, in which words. */
export default function RecordSheet({
  picked,
  first = 'watered',
  onClose,
}: {
  picked: readonly BenchRow[];
  /** What the entry begins with. */
  first?: What;
  onClose: () => void;
}) {
  const [what, setWhat] = useState<What>(first);
  const [day, setDay] = useState<string>(todayHere());
  const [text, setText] = useState('');
  const [missing, setMissing] = useState<{ day?: string; text?: string }>({});
  const { busy, fault, send } = useSending();

  async function keep(event: FormEvent) {
    event.preventDefault();
    const gaps = {
      ...(isDay(day) ? {} : { day: 'Choose a day.' }),
      ...(what === 'note' && text.trim() === '' ? { text: 'Write the note first.' } : {}),
    };
    setMissing(gaps);
    if (Object.keys(gaps).length > 0) return;
    const ids = picked.map(({ plant }) => plant.id);
    const record: RecordForMany = isStop(what)
      ? { type: 'stop', day, depth: what, note: text }
      : { type: 'note', day, kind: what, text };
    const words = isStop(what)
      ? `${STOP_WORDS[what]}: written down for ${forWhom(picked)}.`
      : doneWords(what, picked);
    if (await send(() => recordForMany(ids, record, words))) onClose();
  }

  return (
    <Sheet title={`Write down for ${forWhom(picked)}`} onClose={onClose}>
      <form className={forms.form} onSubmit={keep} noValidate>
        <Field label="What was done or seen">
          {(wiring) => (
            <select {...wiring} value={what} onChange={(event) => setWhat(event.target.value as What)}>
              <optgroup label="Stopped">
                {(['tip', 'deep'] as const).map((depth) => (
                  <option key={depth} value={depth}>
                    {STOP_WORDS[depth]}
                  </option>
                ))}
              </optgroup>
              <optgroup label="Done and seen">
                {LOG_KINDS.map((kind) => (
                  <option key={kind} value={kind}>
                    {LOG_WORDS[kind]}
                  </option>
                ))}
              </optgroup>
            </select>
          )}
        </Field>
        {isStop(what) && <StopCautions depth={what} picked={picked} />}
        <Field label="Day" fault={missing.day}>
          {(wiring) => (
            <input {...wiring} type="date" value={day} onChange={(event) => setDay(event.target.value)} />
          )}
        </Field>
        <Field label={what === 'note' ? 'Note' : 'Note (may stay empty)'} fault={missing.text}>
          {(wiring) => (
            <textarea {...wiring} value={text} onChange={(event) => setText(event.target.value)} />
          )}
        </Field>
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
    </Sheet>
  );
}

/** What the depth means, and the cautions of every kind among the plants. */
function StopCautions({ depth, picked }: { depth: 'tip' | 'deep'; picked: readonly BenchRow[] }) {
  const cautions = [...new Set(picked.map(({ plant }) => cuttingCaution(plant.kind)))];
  return (
    <div className={styles.cautions}>
      <p>{STOP_MEANINGS[depth]}</p>
      {cautions.map((words) => (
        <p key={words} className={styles.caution}>
          <b>Take care.</b> {words}
        </p>
      ))}
    </div>
  );
}
