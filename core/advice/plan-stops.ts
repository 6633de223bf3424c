import { addDays, type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { Advice } from './advice.ts';
import { cuttingCaution } from './cautions.ts';
import type { PlantHistory } from './plant-history.ts';
import { type StopRule, stopRules } from './stop-rules.ts';

/** A stop this many days before its window opens still counts as the one planned. */
const EARLY_DAYS = 14;
/** From this many days before the window on, the plan asks for attention. */
const SOON_DAYS = 14;

interface Window extends StopRule {
  readonly from: Day;
  readonly to: Day;
}

/**
 * What to stop when, counted back from the show.
 *
 * @returns the next stop that is not yet written down, or what to make of a missed one; `null` without a show day,
 * for kinds with no known rule, and when all stops are done
 *
 * Reference: `stopRules`. "Better early, taking off early bloom, than late": common practice, no source.
 */
export function planStops(history: PlantHistory): Advice | null {
  const { showDay, today, kind } = history;
  if (showDay === null) return null;
  if (showDay < today) return showIsOver(showDay);
  const windows = stopRules(kind).map(
    (rule): Window => ({
      ...rule,
      from: addDays(showDay, -rule.fromDaysBefore),
      to: addDays(showDay, -rule.toDaysBefore),
    }),
  );
  const open = windows.filter((window) => !isDone(window, history));
  const next = open.find(({ to }) => to >= today);
  if (next !== undefined) return nextStop(next, showDay, history);
  // Only the last stop before the show decides the bloom; a deep stop left out is no loss to speak of.
  const last = windows.at(-1);
  return last !== undefined && open.includes(last) ? missedStop(last, showDay, history) : null;
}

/** The last window is done by any stop since it drew near; an earlier one also by any later stop. */
function isDone(window: Window, { stops, today }: PlantHistory): boolean {
  return stops.some(({ day }) => day <= today && daysBetween(window.from, day) >= -EARLY_DAYS);
}

function nextStop(window: Window, showDay: Day, history: PlantHistory): Advice {
  const daysLeft = daysBetween(history.today, window.from);
  const isOpen = daysLeft <= 0;
  const dates = `${dayInWords(window.from)} to ${dayInWords(window.to)}`;
  return {
    kind: 'plan',
    urgency: isOpen ? 2 : daysLeft <= SOON_DAYS ? 1 : 0,
    what: isOpen
      ? `Give the ${window.depth} stop by ${dayInWords(window.to)}.`
      : `Plan the ${window.depth} stop for ${dates}.`,
    where: 'Every stem on the same day, except the tiniest new shoots (common practice, no source).',
    howMuch: HOW_MUCH[window.depth],
    why: `Counted back from the show on ${dayInWords(showDay)}. ${window.standing} Your own records go before it.`,
    sureness: 'unsure',
    caution: cuttingCaution(history.kind),
  };
}

const HOW_MUCH = {
  tip: 'The growing tip only.',
  deep: 'Stems taken further back, each to a joint with a sound bud.',
} as const;

function missedStop(window: Window, showDay: Day, history: PlantHistory): Advice {
  const bloom = addDays(history.today, window.toDaysBefore);
  return {
    kind: 'plan',
    urgency: 1,
    what: `The time for the ${window.depth} stop is past.`,
    where: null,
    howMuch: `It was ${dayInWords(window.from)} to ${dayInWords(window.to)}. A stop today would bring bloom about ${dayInWords(bloom)}, ${daysBetween(showDay, bloom)} days after the show.`,
    why: `No stop is written down for it. ${window.standing} Better early, taking off early bloom, than late (common practice, no source). If it was done, write it down.`,
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
