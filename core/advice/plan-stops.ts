import { type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { DEFAULT_STOPS } from '../season/default-stops.ts';
import { percent } from '../season/stop-effect.ts';
import { type PlannedStop, type StopPlan, stopPlan } from '../season/stop-plan.ts';
import { days } from '../season/stop-plan-words.ts';
import type { Advice } from './advice.ts';
import { cuttingCaution } from './cautions.ts';
import type { PlantHistory } from './plant-history.ts';

/** From this many days before the window on, the plan asks for attention. */
const SOON_DAYS = 14;

/**
 * What to stop when, counted back from the show.
 *
 * @returns the next stop that is not yet written down, what to make of a missed one, or what a late one means; `null` without a show day,
 * for kinds with no known figure, when the last stop was done in time, and once the plant is in full bloom
 *
 * Reference: `stopPlan`. "Better early, taking off early bloom, than late": common practice, no source.
 */
export function planStops(history: PlantHistory): Advice | null {
  const { showDay, today, kind, stops } = history;
  if (showDay === null) return null;
  if (showDay < today) return showIsOver(showDay);
  const { knowledge, ...plant } = history.season ?? WITHOUT_RECORDS;
  const plan = stopPlan({ ...plant, kind, showDay, today, stops }, knowledge);
  if (!plan.ok || plan.bloomedOn !== null) return null;
  const next = plan.steps.find(({ state }) => state === 'to-come' || state === 'open' || state === 'overdue');
  if (next !== undefined) return nextStop(next, plan, history);
  const last = plan.steps.at(-1);
  return last?.state === 'left-out' ? missedStop(last, plan) : lateStop(plan);
}

const WITHOUT_RECORDS = {
  plantId: '',
  variety: '',
  knowledge: { defaults: DEFAULT_STOPS, records: [] },
} as const;

function nextStop(step: PlannedStop, plan: StopPlan, history: PlantHistory): Advice {
  const daysLeft = daysBetween(history.today, step.window.from);
  const isOpen = daysLeft <= 0;
  return {
    kind: 'plan',
    urgency: isOpen ? 2 : daysLeft <= SOON_DAYS ? 1 : 0,
    what: whatToDo(step),
    where: 'Every stem on the same day, except the tiniest new shoots (common practice, no source).',
    howMuch: HOW_MUCH[step.depth],
    why: whyThen(step, plan),
    sureness: 'unsure',
    caution: cuttingCaution(history.kind),
  };
}

function whatToDo({ role, depth, window, state }: PlannedStop): string {
  const name = role === 'last' ? `last ${depth} stop` : `${role} stop, a ${depth} stop`;
  if (state === 'overdue' && role === 'last') return `Give the ${name} now.`;
  if (state === 'to-come') {
    return `Plan the ${name}, for ${dayInWords(window.from)} to ${dayInWords(window.to)}.`;
  }
  return state === 'open' ? `Give the ${name}, by ${dayInWords(window.to)}.` : `Give the ${name}, soon.`;
}

function whyThen(step: PlannedStop, plan: StopPlan): string {
  const show = `Counted back from the show on ${dayInWords(plan.showDay)}.`;
  const { planned } = plan;
  if (step.role !== 'last') return `${show} ${step.words}`;
  const usual =
    step.usual === null
      ? ''
      : ` Usual is ${dayInWords(step.usual.from)} to ${dayInWords(step.usual.to)}; this day allows for how far plants differ.`;
  return `${show} ${plan.words}${usual} ${planned.standing} ${planned.shareInWords} Your own records go before it.`;
}

const HOW_MUCH = {
  tip: 'The growing tip only.',
  deep: 'Stems taken further back, each to a joint with a sound bud.',
} as const;

function missedStop(step: PlannedStop, plan: StopPlan): Advice {
  const { window } = step;
  return {
    kind: 'plan',
    urgency: 1,
    what: `The time for the last ${step.depth} stop is past.`,
    where: null,
    howMuch: `It was ${dayInWords(window.from)} to ${dayInWords(window.to)}. ${plan.words}`,
    why: `No stop is written down for it. ${plan.planned.standing} Better early, taking off early bloom, than late (common practice, no source). If it was done, write it down.`,
    sureness: 'unsure',
    caution: null,
  };
}

/** The last stop is done: only if it brings more risk than accepted is there something to say. */
function lateStop(plan: StopPlan): Advice | null {
  const { effect, acceptedLate, planned } = plan;
  const step = plan.steps.at(-1);
  if (effect === null || effect.chanceLate <= acceptedLate || !step?.offDays || step.offDays < 0) return null;
  return {
    kind: 'plan',
    urgency: 0,
    what: `The last stop was ${days(step.offDays)} late.`,
    where: null,
    howMuch: effect.words,
    why: `You accept ${percent(acceptedLate)}. ${planned.standing} ${planned.shareInWords}`,
    sureness: 'unsure',
    caution: null,
  };
}

function showIsOver(showDay: Day): Advice {
  return {
    kind: 'plan',
    urgency: 0,
    what: 'Set the day of the next show.',
    where: null,
    howMuch: null,
    why: `The show on ${dayInWords(showDay)} is over, so no stop can be counted back from it.`,
    sureness: 'sure',
    caution: null,
  };
}
