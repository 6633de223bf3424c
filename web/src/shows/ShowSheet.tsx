import { type FormEvent, useState } from 'react';
import type { Show } from '../../../core/season/show.ts';
import { addShow, changeShow } from '../api/shows.ts';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { ClassFields } from './ClassFields.tsx';
import { EMPTY_SHOW, readShow, type ShowDraft, showDraftOf } from './show-draft.ts';

/** Adds a show, or changes one. */
export default function ShowSheet({ show, onClose }: { show: Show | null; onClose: () => void }) {
  const [draft, setDraft] = useState<ShowDraft>(() => (show === null ? EMPTY_SHOW : showDraftOf(show)));
  const [unread, setUnread] = useState<Record<string, string>>({});
  const { busy, fault, fields, send } = useSending();
  const set = (part: Partial<ShowDraft>) => setDraft({ ...draft, ...part });
  const wrong: Record<string, string> = { ...fields, ...unread };

  async function save(event: FormEvent) {
    event.preventDefault();
    const read = readShow(draft);
    setUnread(read.ok ? {} : read.fields);
    if (!read.ok) return;
    const isKept = await send(async () => {
      if (show === null) await addShow(read.form);
      else await changeShow(show, read.form);
    });
    if (isKept) onClose();
  }

  return (
    <Sheet title={show === null ? 'Add a show' : 'Change the show'} onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <Field label="Name" fault={wrong.name}>
          {(wiring) => (
            <input
              {...wiring}
              value={draft.name}
              autoComplete="off"
              onChange={(event) => set({ name: event.target.value })}
            />
          )}
        </Field>
        <Field label="Day" help="The day the plants must be at their best." fault={wrong.day}>
          {(wiring) => (
            <input
              {...wiring}
              type="date"
              value={draft.day}
              onChange={(event) => set({ day: event.target.value })}
            />
          )}
        </Field>
        <Field label="Place (may stay empty)" fault={wrong.place}>
          {(wiring) => (
            <input
              {...wiring}
              value={draft.place}
              autoComplete="off"
              onChange={(event) => set({ place: event.target.value })}
            />
          )}
        </Field>
        <Field
          label="Rules (may stay empty)"
          help="As the schedule has them: staging, labels, what is judged."
          fault={wrong.rules}
        >
          {(wiring) => (
            <textarea
              {...wiring}
              value={draft.rules}
              onChange={(event) => set({ rules: event.target.value })}
            />
          )}
        </Field>
        <ClassFields
          classes={draft.classes}
          fields={wrong}
          onChange={(classes) => {
            // A fault points at a class by its place in the list.
            setUnread({});
            set({ classes });
          }}
        />
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
    </Sheet>
  );
}
