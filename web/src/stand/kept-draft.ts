import { createKeptStore } from '../parts/store.ts';
import { SET_UP_STEPS, type SetUpStep } from './set-up-steps.ts';
import { EMPTY_STAND, type StandDraft } from './stand-draft.ts';

/** A set-up that was left half-way. */
export interface KeptDraft {
  readonly draft: StandDraft;
  readonly step: SetUpStep;
}

/** The stand being set up, kept on this device until it is done, so that it can be left and gone on with. */
export const keptDraft = createKeptStore<KeptDraft | null>('rondure.stand-set-up', null, isKeptDraft);

function isKeptDraft(kept: unknown): kept is KeptDraft {
  if (typeof kept !== 'object' || kept === null || !('draft' in kept) || !('step' in kept)) return false;
  const { draft, step } = kept;
  if (typeof draft !== 'object' || draft === null || !SET_UP_STEPS.includes(step as SetUpStep)) return false;
  // A draft kept by an earlier version of the app lacks newer entries; they are filled in when it is read.
  return Object.entries(draft).every(([name]) => name in EMPTY_STAND) && 'name' in draft;
}
