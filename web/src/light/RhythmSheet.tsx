import { type FormEvent, useState } from 'react';
import type { TurnRhythm } from '../../../core/light/next-turn.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import { changeRhythm } from '../api/turns.ts';
import { Choices } from '../parts/Choices.tsx';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import Sheet from '../parts/Sheet.tsx';
import { useSending } from '../parts/use-sending.ts';
import { capital, turnAmountWords } from '../words/turn-words.ts';

const AMOUNTS = [45, 90, 135, 180];
const WAYS = [
  { value: 'clockwise', words: 'Clockwise' },
  { value: 'anticlockwise', words: 'Anticlockwise' },
] as const;

/** How often, how far and which way the pot is turned. */
export default function RhythmSheet({ plant, onClose }: { plant: Plant; onClose: () => void }) {
  const [rhythm, set] = useState<TurnRhythm>(plant.turnRhythm);
  const [reminded, setReminded] = useState(rhythm.everyDays !== null);
  const [every, setEvery] = useState(String(rhythm.everyDays ?? 7));
  const [unread, setUnread] = useState<string>();
  const { busy, fault, fields, send } = useSending();

  async function save(event: FormEvent) {
    event.preventDefault();
    const days = Number(every);
    const wrong = reminded && !(Number.isInteger(days) && days >= 1 && days <= 90);
    setUnread(wrong ? 'Give whole days from 1 to 90, for example 7.' : undefined);
    if (wrong) return;
    const next = { ...rhythm, everyDays: reminded ? days : null };
    if (await send(() => changeRhythm(plant, next))) onClose();
  }

  return (
    <Sheet title="Rhythm of turning" onClose={onClose}>
      <form className={forms.form} onSubmit={save} noValidate>
        <p>
          A quarter turn a week, always the same way so as to remember, is common practice among exhibitors;
          some turn every few days while the winter light is low. None publishes how fast a plant follows the
          light.
        </p>
        <fieldset className={forms.choices}>
          <legend>Reminder</legend>
          <label>
            <input
              type="checkbox"
              checked={reminded}
              onChange={(event) => setReminded(event.target.checked)}
            />
            Remind me on the bench when a turn is due
          </label>
        </fieldset>
        {reminded && (
          <Field
            label="Days from turn to turn"
            fault={unread ?? fields['turnRhythm/everyDays'] ?? fields.turnRhythm}
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
        )}
        <fieldset className={forms.choices}>
          <legend>How far each time</legend>
          {AMOUNTS.map((byDeg) => (
            <label key={byDeg}>
              <input
                type="radio"
                name="by"
                checked={rhythm.byDeg === byDeg}
                onChange={() => set({ ...rhythm, byDeg })}
              />
              {capital(turnAmountWords(byDeg))}
            </label>
          ))}
        </fieldset>
        <Choices
          legend="Which way, seen from above"
          options={WAYS}
          chosen={rhythm.way}
          onChoose={(way) => set({ ...rhythm, way })}
        />
        {fault !== null && <Fault fault={fault} />}
        <KeepOrCancel busy={busy} onCancel={onClose} />
      </form>
    </Sheet>
  );
}
