import { cuttingCaution } from '../advice/cautions.ts';
import { daysBetween } from '../day/day.ts';
import { type PlantSeason, type Work, workKey } from './work.ts';

/** The stops of the plan that are still to be done. */
export function stopWork({ plantId, kind, plan }: PlantSeason): Work[] {
  if (plan === null || plan.bloomedOn !== null) return [];
  return plan.steps
    .filter(({ state }) => state !== 'done' && state !== 'left-out')
    .map(({ role, depth, window, latest, words }) => ({
      key: workKey(plantId, 'stop', `${role}:${plan.showDay}`),
      plantId,
      kind: 'stop',
      day: window.from,
      dueBy: window.to,
      until: daysBetween(window.to, latest) < 0 ? window.to : latest,
      what: `Give the ${role} stop (${depth}): every stem on one day, except the tiniest new shoots.`,
      why: role === 'last' ? plan.words : words,
      standing:
        role === 'last'
          ? `${plan.planned.standing} ${plan.planned.shareInWords}`
          : 'Weeks between stops by the table of defaults. Every stem on one day: common practice, no source.',
      caution: cuttingCaution(kind),
      doneOn: null,
    }));
}
