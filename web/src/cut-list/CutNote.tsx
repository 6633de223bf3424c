import { type FormEvent, useEffect, useRef, useState } from 'react';
import { Field } from '../parts/Field.tsx';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import styles from './CutRow.module.css';
import type { ListedCut } from './listed-cut.ts';
import type { Marking } from './use-marking.ts';

/** Writes or changes the note of one cut. */
export function CutNote({
  cut,
  marking,
  onClose,
}: {
  cut: ListedCut;
  marking: Marking;
  onClose: () => void;
}) {
  const [words, setWords] = useState(cut.note);
  const [busy, setBusy] = useState(false);
  const entry = useRef<HTMLTextAreaElement>(null);
  useEffect(() => entry.current?.focus(), []);

  async function keep(event: FormEvent) {
    event.preventDefault();
    setBusy(true);
    const kept = await marking.mark(cut, { note: words.trim() }, `The note of cut ${cut.number} is kept.`);
    setBusy(false);
    if (kept) onClose();
  }

  return (
    <form className={styles.noting} onSubmit={keep} noValidate>
      <Field label={`Note on cut ${cut.number}`}>
        {(wiring) => (
          <textarea
            {...wiring}
            ref={entry}
            value={words}
            maxLength={500}
            onChange={(event) => setWords(event.target.value)}
          />
        )}
      </Field>
      <KeepOrCancel busy={busy} onCancel={onClose} />
    </form>
  );
}
