import { type FormEvent, useState } from 'react';
import { sideWords } from '../../../core/turned/place-words.ts';
import type { Turn } from '../../../server/schemas/light.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { changeTurn, recordTurn } from '../api/turns.ts';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { todayHere } from '../words/day-words.ts';
import { SideChoice } from './SideChoice.tsx';

/** Writes down or changes one turn of the pot: the day, and the side that faces the light from then on. */
export default function TurnSheet({
  page,
  turn,
  onClose,
}: {
  page: PlantPage;
  turn: Turn | null;
  onClose: () => void;
}) {
  const [day, setDay] = useState<string>(turn?.day ?? todayHere());
  const [faces, setFaces] = useState<number | null>(turn?.facesLightDeg ?? null);
  const [note, setNote] = useState(turn?.note ?? '');
  const [unsaid, setUnsaid] = useState(false);
  const { busy, fault, fields, send } = useSending();

  async function save(event: FormEvent) {
    event.preventDefault();
    setUnsaid(faces === null);
    if (faces === null) return;
    const form = { day, facesLightDeg: faces, note };
    const words = `Written down: ${sideWords(faces)} faces the light.`;
    const change = () =>
      turn === null ? recordTurn(page.plant.id, form, words) : changeTurn(page.plant.id, turn.id, form);
    if (await send(change)) onClose();
  }

  return (
    <Sheet title={turn ? 'Change this turn' : 'Write down a turn'} onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <Field label="Day" fault={fields.day}>
          {(wiring) => (
            <input {...wiring} type="date" value={day} onChange={(event) => setDay(event.target.value)} />
          )}
        </Field>
        <div>
          <SideChoice
            legend="Which side faces the light from then on? Seen from above, the mark at 6 o’clock."
            chosenDeg={faces}
            onChoose={setFaces}
          />
          {unsaid && <p role="alert">Tap the side that faces the light.</p>}
          {fields.facesLightDeg && <p role="alert">{fields.facesLightDeg}</p>}
        </div>
        <Field label="Note (may stay empty)" fault={fields.note}>
          {(wiring) => (
            <textarea {...wiring} value={note} onChange={(event) => setNote(event.target.value)} />
          )}
        </Field>
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
    </Sheet>
  );
}
