import type { Advice } from '../../../core/advice/advice.ts';
import { countWords } from './plant-words.ts';

export type Urgency = Advice['urgency'];

export const URGENCY_WORDS: Record<Urgency, string> = {
  3: 'Today',
  2: 'This week',
  1: 'When convenient',
  0: 'Nothing to do',
};

export const SURENESS_WORDS: Record<Advice['sureness'], string> = {
  sure: 'Sure',
  likely: 'Likely',
  unsure: 'Not sure',
};

/** The most pressing of a plant's advice; a plant without advice needs nothing. */
export function urgencyOf(advice: readonly Advice[]): Urgency {
  return ([3, 2, 1] as const).find((level) => advice.some(({ urgency }) => urgency === level)) ?? 0;
}

/** What a row of the bench needs: its advice, and this week a look at a photo whose measuring broke off. */
export function urgencyOfRow(row: { advice: readonly Advice[]; newest: { state: string } | null }): Urgency {
  const advised = urgencyOf(row.advice);
  return row.newest?.state === 'failed' && advised < 2 ? 2 : advised;
}

/** The sentence on top of the bench; `workedPlants` have dated work today. */
export function benchHeadline(urgencies: readonly Urgency[], workedPlants = 0): string {
  const today = urgencies.filter((urgency) => urgency === 3).length;
  const week = urgencies.filter((urgency) => urgency === 2).length;
  if (today > 0) return `${plantsNeed(today)} you today`;
  if (workedPlants > 0) return `There is work today on ${countWords(workedPlants, 'plant')}`;
  if (week > 0) return `Nothing for today. ${plantsNeed(week)} you this week`;
  return 'Nothing needs doing today';
}

function plantsNeed(count: number): string {
  return count === 1 ? 'One plant needs' : `${NUMBER_WORDS[count] ?? count} plants need`;
}

const NUMBER_WORDS: Record<number, string> = {
  2: 'Two',
  3: 'Three',
  4: 'Four',
  5: 'Five',
  6: 'Six',
  7: 'Seven',
  8: 'Eight',
  9: 'Nine',
};
