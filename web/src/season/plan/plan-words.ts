import { type Day, day } from '../../../../core/day/day.ts';
import type { PlantSeasonAnswer } from '../../../../server/schemas/season.ts';
import { dayWords, shortDayWords } from '../../words/day-words.ts';

export type Plan = NonNullable<PlantSeasonAnswer['plan']>;
export type Step = Plan['steps'][number];

export const ROLE_WORDS: Record<Step['role'], string> = {
  first: 'First stop',
  second: 'Second stop',
  last: 'Last stop',
};

/** The day on which the server reckoned the season. */
export function todayOf({ today }: Pick<PlantSeasonAnswer, 'today'>): Day {
  return day(today);
}

/** "8 Dec to Mon 14 Dec". */
export function windowWords({ from, to }: { from: string; to: string }, today: Day): string {
  return `${shortDayWords(from)} to ${dayWords(to, today)}`;
}

/** A chance as a grower reads it: never a flat 0 or 100 %. */
export function chanceWords(chance: number): string {
  if (chance < 0.01) return 'under 1 %';
  if (chance > 0.99) return 'over 99 %';
  return `${Math.round(100 * chance)} %`;
}

/** More likely late than the grower accepts; once it is in bloom chances are past. */
export function isLate({ bloomedOn, effect, acceptedLate }: Plan): boolean {
  return bloomedOn === null && effect !== null && effect.chanceLate > acceptedLate;
}

/** Whether the bloom that the plan is for cannot have begun: its last stop is not written down, and can still be made in time. */
export function isBloomAhead({ steps }: Pick<Plan, 'steps'>): boolean {
  const last = steps.find(({ role }) => role === 'last');
  return last?.state === 'to-come' || last?.state === 'open';
}
