import { createKeptStore } from '../parts/store.ts';
import { USUAL_COUNT, VIEW_COUNTS, type ViewCount } from './turn-plan.ts';

/** How the grower takes turned sittings, kept on this device. */
export interface TakingChoice {
  readonly count: ViewCount;
  /** The pot wears the printed collar, which tells the turns itself. */
  readonly collar: boolean;
}

export const takingChoice = createKeptStore<TakingChoice>(
  'rondure.taking',
  { count: USUAL_COUNT, collar: false },
  (kept): kept is TakingChoice =>
    typeof kept === 'object' &&
    kept !== null &&
    VIEW_COUNTS.includes((kept as TakingChoice).count) &&
    typeof (kept as TakingChoice).collar === 'boolean',
);
