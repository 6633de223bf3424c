import type { Day } from '../../core/day/day.ts';
import { dayInWords } from '../../core/day/day-in-words.ts';
import type { PlantLeaf } from '../schemas/condition.ts';
import type { Database } from '../store/database.ts';
import { healthyDays } from '../store/healthy-days.ts';
import { daysToLearnFrom, daysWithLook, LEARNED_FROM_SITTINGS } from '../store/normal-leaf.ts';

export type LearnedLeaf = PlantLeaf['learned'];

/** What the next photo's leaf is held against, and how to have it learned anew. */
export function learnedLeaf(db: Database, plantId: string): LearnedLeaf {
  const looks = daysWithLook(db, plantId);
  const healthy = healthyDays(db, plantId);
  const days = daysToLearnFrom(looks, healthy, null);
  const isTold = days.some((day) => healthy.includes(day));
  const newest = looks.at(-1)?.day ?? null;
  return {
    state: days.length > 0 ? 'learned' : 'not-yet',
    days: days.length > 0 ? days : looks.map(({ day }) => day).slice(0, LEARNED_FROM_SITTINGS - 1),
    wanted: LEARNED_FROM_SITTINGS,
    healthyDays: healthy,
    canLearnFrom: newest !== null && !healthy.includes(newest) ? newest : null,
    words: days.length === 0 ? notYet(looks.length) : learned(days, isTold),
  };
}

function notYet(sittings: number): string {
  const so = sittings === 0 ? 'none yet' : sittings === 1 ? 'one so far' : `${sittings} so far`;
  return `What is normal for this plant’s leaf is learned from its first ${LEARNED_FROM_SITTINGS} sittings whose white is known: ${so}. Until then leaf is judged as a green-leaved plant’s.`;
}

function learned(days: readonly Day[], isTold: boolean): string {
  const listed = days.map(dayInWords).join(', ');
  return isTold
    ? `Its leaf is held against ${listed}, which you called healthy.`
    : `Its leaf is held against its first ${days.length} sittings, ${listed}, taken to be healthy. If it had yellow leaf then, say on a day when it is healthy.`;
}
