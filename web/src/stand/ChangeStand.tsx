import { useState } from 'react';
import { useLocation } from 'wouter';
import { isDay } from '../../../core/day/day.ts';
import type { Stand, StandChange } from '../../../server/schemas/stand.ts';
import { changeStand } from '../api/stands.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import { typedTape } from '../parts/LengthInput.tsx';
import { useSending } from '../parts/use-sending.ts';
import { todayHere } from '../words/day-words.ts';
import { EmptyPhotoStep } from './EmptyPhotoStep.tsx';
import { StandSteps } from './StandSteps.tsx';
import { SET_UP_STEPS, type SetUpStep, stepOfFault } from './set-up-steps.ts';
import { changedParts, readStand, standDraftOf } from './stand-draft.ts';

/** One step of a stand that is already kept: what is changed holds from a day on, what was taken before keeps its stand. */
export function ChangeStand({
  stand,
  step,
  plantId,
  onStep,
}: {
  stand: Stand;
  step: SetUpStep;
  plantId: string | null;
  onStep: (step: SetUpStep) => void;
}) {
  const [, goTo] = useLocation();
  const [draft, setDraft] = useState(() => standDraftOf(stand, typedTape()));
  const [sinceDay, setSinceDay] = useState<string>(() => todayHere());
  const [unread, setUnread] = useState<Readonly<Record<string, string>>>({});
  const { busy, fault, fields, send } = useSending();
  const leave = () => goTo(plantId ? `/plants/${plantId}` : `/stands/${stand.id}`);

  async function keep() {
    const read = readStand(draft);
    const faults = {
      ...(read.ok ? {} : read.fields),
      ...(isDay(sinceDay) ? {} : { sinceDay: 'Give the day from which the change holds.' }),
    };
    setUnread(faults);
    const wrong = stepOfFault(faults);
    if (wrong !== null && wrong !== step) onStep(wrong);
    if (!read.ok || !isDay(sinceDay)) return;
    const change: StandChange = changedParts(standDraftOf(stand, draft.tape), draft, read.form);
    if (Object.keys(change).length === 0) return leave();
    await send(async () => {
      const changed = await changeStand(stand.id, { ...change, sinceDay });
      // What was moved makes the old empty photo say nothing: a new one is asked for at once.
      if (stand.emptyPhoto && !changed.emptyPhoto) onStep('empty');
      else leave();
    });
  }

  if (step === 'empty') {
    return (
      <StandSteps title={stand.name} step={step} openSteps={SET_UP_STEPS} onStep={onStep}>
        <EmptyPhotoStep stand={stand} onDone={leave} />
      </StandSteps>
    );
  }
  return (
    <StandSteps
      title={`Change ${stand.name}`}
      step={step}
      draft={draft}
      fields={{ ...fields, ...unread }}
      onChange={setDraft}
      onStep={onStep}
      openSteps={SET_UP_STEPS}
      onSubmit={keep}
      foot={
        <>
          <Field
            label="The change holds from"
            help={`Photos taken before keep the stand as it was: nothing in the record changes.${stand.emptyPhoto ? ' When the camera, the backdrop or the sheet has moved, a new empty photo is needed.' : ''}`}
            fault={unread.sinceDay ?? fields.sinceDay}
          >
            {(wiring) => (
              <input
                {...wiring}
                type="date"
                value={sinceDay}
                onChange={(event) => setSinceDay(event.target.value)}
              />
            )}
          </Field>
          {fault !== null && <Fault fault={fault} />}
          <button type="submit" className={buttons.button} disabled={busy}>
            Keep the change
          </button>
          <button type="button" className={buttons.quiet} onClick={leave}>
            Cancel
          </button>
        </>
      }
    />
  );
}
