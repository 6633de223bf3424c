import { useState } from 'react';
import { useLocation } from 'wouter';
import { chooseStand, createStand } from '../api/stands.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { typedTape } from '../parts/LengthInput.tsx';
import { useSending } from '../parts/use-sending.ts';
import { keptDraft } from './kept-draft.ts';
import { StandSteps } from './StandSteps.tsx';
import { SET_UP_STEPS, type SetUpStep, stepOfFault } from './set-up-steps.ts';
import { EMPTY_STAND, readStand, type StandDraft } from './stand-draft.ts';

/**
 * The first four steps of a new stand. What is typed is kept on this device at every letter; after the fourth the
 * stand is made, and the empty photo is sent to it.
 */
export function NewStand({
  step: asked,
  plantId,
  onStep,
}: {
  step: SetUpStep | null;
  plantId: string | null;
  onStep: (step: SetUpStep) => void;
}) {
  const [, goTo] = useLocation();
  const kept = keptDraft.useValue();
  const [unread, setUnread] = useState<Readonly<Record<string, string>>>({});
  const { busy, fault, fields, send } = useSending();
  const draft = kept === null ? { ...EMPTY_STAND, tape: typedTape() } : { ...EMPTY_STAND, ...kept.draft };
  const step = asked ?? kept?.step ?? 'camera';
  const change = (next: StandDraft) => keptDraft.write({ draft: next, step });

  function show(next: SetUpStep) {
    keptDraft.write({ draft, step: next });
    onStep(next);
    window.scrollTo(0, 0);
  }

  async function onward() {
    const read = readStand(draft);
    const faults = read.ok ? {} : read.fields;
    setUnread(faults);
    const at = SET_UP_STEPS.indexOf(step);
    const first = stepOfFault(faults);
    // Only what was asked so far can be wrong.
    if (first !== null && SET_UP_STEPS.indexOf(first) <= at) return first === step ? undefined : show(first);
    const next = SET_UP_STEPS[at + 1];
    if (next && next !== 'empty') return show(next);
    if (read.ok) await send(() => make(read.form));
  }

  async function make(form: Parameters<typeof createStand>[0]) {
    const stand = await createStand(form);
    keptDraft.write(null);
    if (plantId) await chooseStand(plantId, stand);
    goTo(`/stands/${stand.id}/set-up?step=empty${plantId ? `&plant=${plantId}` : ''}`, { replace: true });
  }

  return (
    <StandSteps
      title="Set up the stand"
      // The empty photo needs the stand, which is made after the fourth step.
      step={step === 'empty' ? 'scale' : step}
      draft={draft}
      fields={{ ...fields, ...unread }}
      onChange={change}
      onStep={show}
      openSteps={SET_UP_STEPS.slice(0, 4)}
      onSubmit={onward}
      foot={
        <>
          {fault !== null && <Fault fault={fault} />}
          <button type="submit" className={buttons.button} disabled={busy}>
            {step === 'scale' ? 'Keep the stand, go on to the empty photo' : 'Next'}
          </button>
          <button
            type="button"
            className={buttons.quiet}
            onClick={() => {
              keptDraft.write({ draft, step });
              goTo(plantId ? `/plants/${plantId}` : '/stands');
            }}
          >
            Leave for now
          </button>
        </>
      }
    />
  );
}
