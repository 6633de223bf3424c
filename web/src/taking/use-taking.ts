import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting, View } from '../../../server/schemas/sitting.ts';
import { type Sending, sendings } from '../photos/sending.ts';
import { todayHere } from '../words/day-words.ts';
import { takingChoice } from './taking-choice.ts';
import { nextTurnDeg, planOfViews, type TurnPlan } from './turn-plan.ts';

/** How far a turned sitting has come. */
export interface Taking {
  readonly sitting: Sitting | null;
  /** The day that photos get whatever their camera says, when views are added to a sitting named in the address. */
  readonly day: string | null;
  readonly plan: TurnPlan;
  /** Photos that the server has not joined to the sitting yet, or that are stuck. */
  readonly onTheirWay: readonly Sending[];
  /** The turn asked for next; `null` when every planned one is taken or on its way. */
  readonly nextDeg: number | null;
  /** The turn of the last shot: how the pot stands; `null` before the first. */
  readonly standsAtDeg: number | null;
}

/**
 * Joins what the server has with what is on its way.
 *
 * @param sittingId the one to go on with; today's otherwise
 * @param workedId the sitting whose cuts were just made: its shots are taken once more, after the work
 */
export function useTaking(page: PlantPage, sittingId: string | null, workedId: string | null): Taking {
  const today = todayHere();
  const mine = sendings
    .useValue()
    .filter(({ plantId, chosenOn }) => plantId === page.plant.id && chosenOn === today);
  const { count } = takingChoice.useValue();
  const sitting = currentSitting(page, mine, sittingId);
  const all = sitting?.views ?? [];
  // What shows the plant after the work is a set of shots of its own.
  const afterWork = sitting !== null && sitting.id === workedId;
  const views = all.filter((view) => view.afterWork === afterWork);
  const plan = planOfViews(count, views);
  const onTheirWay = mine.filter(
    ({ stage }) => !('viewId' in stage) || !all.some(({ id }) => id === stage.viewId),
  );
  const unread = views.filter(({ turnDeg, state }) => turnDeg === null && isUnderway(state));
  const coming = [
    ...onTheirWay.filter(({ stage }) => stage.at !== 'refused').map(({ turnDeg }) => turnDeg),
    ...unread.map(() => null),
  ];
  const turns = [...views.map(({ turnDeg }) => turnDeg), ...coming].filter((turnDeg) => turnDeg !== null);
  return {
    sitting,
    day: sitting !== null && sitting.id === sittingId ? sitting.day : null,
    plan,
    onTheirWay,
    nextDeg: nextTurnDeg(plan, coming),
    standsAtDeg: turns.at(-1) ?? null,
  };
}

/** Not measured yet, so that a collar may still tell its turn. */
function isUnderway(state: View['state']): boolean {
  return state === 'received' || state === 'measuring';
}

/** The sitting named, else the one that the last photo went to (its camera may have another day), else today's. */
function currentSitting(page: PlantPage, mine: readonly Sending[], sittingId: string | null): Sitting | null {
  const named = page.sittings.find(({ id }) => id === sittingId);
  if (named) return named;
  const kept = mine.flatMap(({ stage }) => (stage.at === 'kept' ? [stage.viewId] : [])).at(-1);
  return (
    page.sittings.find(({ views }) => views.some(({ id }) => id === kept)) ??
    page.sittings.find(({ day }) => day === todayHere()) ??
    null
  );
}
