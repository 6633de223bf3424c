import { type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { percent } from './stop-effect.ts';
import type { PlannedStop, StopPlan } from './stop-plan.ts';

/** Where one step of the plan stands, as a sentence or two. */
export function stepWords(step: Omit<PlannedStop, 'words'>): string {
  const name = `The ${step.role === 'last' ? 'last' : step.role} stop (${step.depth})`;
  const dates = `${dayInWords(step.window.from)} to ${dayInWords(step.window.to)}`;
  switch (step.state) {
    case 'to-come':
      return `${name} is planned for ${dates}.`;
    case 'open':
      return `${name} is due by ${dayInWords(step.window.to)}.`;
    case 'overdue':
      return step.role === 'last'
        ? `${name} was planned for ${dates}; every day from now on makes the plant later.`
        : `${name} was planned for ${dates}. It can still be done until ${dayInWords(step.latest)}: shoots need about a month until they can be stopped again.`;
    case 'left-out':
      return step.role === 'last'
        ? `${name} was planned for ${dates}. Done now, it would be late more often than not.`
        : `${name} was planned for ${dates} and is left out. The bloom does not suffer; the plant has fewer shoots.`;
    case 'done':
      return `${name} was done on ${dayInWords(step.doneOn as Day)}, ${offInWords(step.offDays ?? 0)}.`;
  }
}

/**
 * What the plan says on the whole: how the last stop stands, and what that means for the show.
 *
 * @param isNoted whether the day of full bloom stands in the records; otherwise it is told from photographs
 */
export function planWords(plan: Omit<StopPlan, 'ok' | 'words'>, isNoted: boolean): string {
  const { effect, last, restsOn, acceptedLate, bloomedOn } = plan;
  const step = plan.steps.at(-1) as PlannedStop;
  if (bloomedOn !== null) return bloomedInWords(bloomedOn, plan.showDay, isNoted);
  if (effect === null) {
    return `${step.words} How long this kind takes from such a stop to full bloom is not known, so nothing can be said of the show.`;
  }
  switch (restsOn) {
    case 'written':
      return `${doneInWords(step.offDays ?? 0)} ${effect.words}`;
    case 'planned':
      return `Last stop by ${dayInWords(last.lastDay)}, ${last.daysBeforeShow} days before the show: later than that, more than ${percent(acceptedLate)} of plants would be late. ${effect.words}`;
    case 'today':
      return `No last stop is written down; its last day was ${dayInWords(last.lastDay)}. If it is done today: ${effect.words[0]?.toLowerCase()}${effect.words.slice(1)}${withoutInWords(plan)}`;
  }
}

function bloomedInWords(bloomedOn: Day, showDay: Day, isNoted: boolean): string {
  const after = daysBetween(showDay, bloomedOn);
  const when = after === 0 ? 'the day of' : `${days(Math.abs(after))} ${after > 0 ? 'after' : 'before'}`;
  return isNoted
    ? `In full bloom since ${dayInWords(bloomedOn)}, ${when} the show.`
    : `As the photographs show, in full bloom since about ${dayInWords(bloomedOn)}, ${when} the show.`;
}

function withoutInWords({ withoutLast }: Pick<StopPlan, 'withoutLast'>): string {
  if (withoutLast === null) return '';
  const { stopDay, depth, words } = withoutLast;
  return ` Left as it is, the ${depth} stop of ${dayInWords(stopDay)} counts: ${words[0]?.toLowerCase()}${words.slice(1)}`;
}

function doneInWords(offDays: number): string {
  if (offDays === 0) return 'Done as planned.';
  return offDays > 0 ? `Done ${days(offDays)} late.` : `Done ${days(-offDays)} early.`;
}

function offInWords(offDays: number): string {
  if (offDays === 0) return 'as planned';
  return offDays > 0 ? `${days(offDays)} late` : `${days(-offDays)} early`;
}

/** "1 day", "9 days". */
export function days(count: number): string {
  return count === 1 ? '1 day' : `${count} days`;
}
