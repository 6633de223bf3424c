import { type FormEvent, useState } from 'react';
import { correctView, measureAnew, removeView } from '../api/corrections.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import { Icon } from '../parts/Icon.tsx';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { notesOnDay } from '../photo/day-notes.ts';
import { TurnField } from '../taking/TurnField.tsx';
import { readTurn, turnEntryOf } from '../taking/turn-entry.ts';
import type { Leaf } from './leafing.ts';

const FROM_WORDS = {
  exif: 'The camera wrote this day into the photo.',
  upload: 'The camera wrote no day, so the day of sending was taken.',
  grower: 'You gave this day.',
} as const;

/** Corrects a photo's day or turn, measures it anew, or removes it. */
export default function CorrectPhotoSheet({
  plantId,
  leaf,
  onClose,
}: {
  plantId: string;
  leaf: Leaf;
  onClose: () => void;
}) {
  const { view, sitting } = leaf;
  const [day, setDay] = useState<string>(sitting.day);
  const [turn, setTurn] = useState(() => turnEntryOf(view.turnDeg));
  const [unread, setUnread] = useState<string>();
  const { busy, fault, fields, send } = useSending();
  const closeAfter = async (change: () => Promise<void>) => {
    if (await send(change)) onClose();
  };

  function save(event: FormEvent) {
    event.preventDefault();
    const read = readTurn(turn);
    setUnread(read.ok ? undefined : read.fault);
    if (!read.ok) return;
    const { turnDeg } = read;
    void closeAfter(() =>
      correctView(plantId, leaf, {
        ...(day === sitting.day ? {} : { day }),
        ...(turnDeg === view.turnDeg ? {} : { turnDeg }),
      }),
    );
  }

  return (
    <Sheet title="Correct this photo" onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <p>{view.fileName}</p>
        <Field
          label="Day it was taken"
          help={[FROM_WORDS[view.takenFrom], ...notesOnDay(view.report?.notes ?? [])].join(' ')}
          fault={fields.day}
        >
          {(wiring) => (
            <input {...wiring} type="date" value={day} onChange={(event) => setDay(event.target.value)} />
          )}
        </Field>
        <TurnField entry={turn} fault={unread ?? fields.turnDeg} onChange={setTurn} />
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
      <div className={forms.part}>
        <div className={buttons.row}>
          <button
            type="button"
            className={buttons.quiet}
            disabled={busy}
            onClick={() => closeAfter(() => measureAnew(plantId, view.id))}
          >
            <Icon name="again" /> Measure it anew
          </button>
          <button
            type="button"
            className={buttons.quiet}
            disabled={busy}
            onClick={() => closeAfter(() => removeView(plantId, view))}
          >
            <Icon name="remove" /> Remove this photo
          </button>
        </div>
        <p>A removed photo can be brought back with Undo.</p>
      </div>
    </Sheet>
  );
}
