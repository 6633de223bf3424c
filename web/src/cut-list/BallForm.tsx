import { type FormEvent, useState } from 'react';
import type { CutTo } from '../../../server/schemas/cut-to.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import { changeCutTo } from '../api/cuts.ts';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import forms from '../parts/forms.module.css';
import { KeepOrCancel } from '../parts/KeepOrCancel.tsx';
import { LengthInput, typedUnit } from '../parts/LengthInput.tsx';
import { useSending } from '../parts/use-sending.ts';
import styles from './BallSection.module.css';
import { type BallDraft, ballDraftOf, readBallDraft } from './ball-draft.ts';

const WAYS: readonly (readonly [CutTo['kind'], string, string])[] = [
  ['even-up', 'Even up', 'Only what stands outside the plant’s own ball comes off.'],
  ['width', 'A width of my own', 'All that stands outside a ball of this width comes off.'],
  [
    'show',
    'Back from the show',
    'The widest it may be on the day, less what it is expected to grow until then.',
  ],
];

/** The three ways to choose the ball to cut to. */
export function BallForm({ plant, onClose }: { plant: Plant; onClose: () => void }) {
  const [draft, setDraft] = useState(() => ballDraftOf(plant));
  const [unread, setUnread] = useState<Record<string, string>>({});
  const { busy, fault, fields, send } = useSending();
  const set = (part: Partial<BallDraft>) => setDraft({ ...draft, ...part });
  // What the server refuses of a width comes under the name that it has there.
  const refused = fields['cutTo/widthMm'] ?? fields['cutTo/widestMm'] ?? fields.cutTo;

  async function keep(event: FormEvent) {
    event.preventDefault();
    const read = readBallDraft(draft);
    setUnread(read.ok ? {} : read.fields);
    if (!read.ok) return;
    const { ok: _, ...change } = read;
    if (await send(() => changeCutTo(plant, change))) onClose();
  }

  return (
    <form className={styles.form} onSubmit={keep} noValidate>
      <fieldset className={forms.choices}>
        <legend>Cut to</legend>
        {WAYS.map(([kind, name, words]) => (
          <label key={kind}>
            <input type="radio" name="cut-to" checked={draft.kind === kind} onChange={() => set({ kind })} />
            <span>
              <b>{name}.</b> {words}
            </span>
          </label>
        ))}
      </fieldset>
      {draft.kind === 'width' && (
        <Field label={`Width of the ball, ${typedUnit()}`} fault={unread.width ?? refused}>
          {(wiring) => (
            <LengthInput
              {...wiring}
              placeholderMm={300}
              mm={draft.width}
              onChange={(width) => set({ width })}
            />
          )}
        </Field>
      )}
      {draft.kind === 'show' && (
        <>
          <Field
            label={`Widest on the day, ${typedUnit()}`}
            help="What the class allows, or what you can carry."
            fault={unread.widest ?? refused}
          >
            {(wiring) => (
              <LengthInput
                {...wiring}
                placeholderMm={400}
                mm={draft.widest}
                onChange={(widest) => set({ widest })}
              />
            )}
          </Field>
          <Field label="Day of the show" fault={unread.showDay ?? fields.showDay}>
            {(wiring) => (
              <input
                {...wiring}
                type="date"
                value={draft.showDay}
                onChange={(event) => set({ showDay: event.target.value })}
              />
            )}
          </Field>
        </>
      )}
      {fault !== null && <Fault fault={fault} />}
      <KeepOrCancel busy={busy} onCancel={onClose} />
    </form>
  );
}
