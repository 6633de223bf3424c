import { daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { foliageAdvice } from '../foliage/foliage-words.ts';
import type { Advice } from './advice.ts';
import type { PlantHistory } from './plant-history.ts';

/** Later the leaf has gone on, and only a new photo tells. */
const STALE_DAYS = 21;

/**
 * Which leaf to clear, once yellow or brown has risen beyond what two photos differ by.
 *
 * @returns advice until leaf is cleared or the next sitting; else `null`
 *
 * Notes: never urgent: it waits behind what has a date. That dead and yellow leaf moulds is common practice, no source.
 */
export function clearLeaf({ leaf, today }: PlantHistory): Advice | null {
  if (leaf == null || leaf.before === null) return null;
  const { now, before, clearedOn } = leaf;
  if (clearedOn !== null && clearedOn >= now.day) return null;
  if (daysBetween(now.day, today) > STALE_DAYS) return null;
  const found = foliageAdvice(now.foliage, before.foliage);
  if (found === null) return null;
  return {
    kind: 'clear',
    urgency: 1,
    what: found.act,
    where: `As seen in the photo of ${dayInWords(now.day)}, where it is drawn.`,
    howMuch: `${found.finding} The sitting before is that of ${dayInWords(before.day)}.`,
    why: `Dead and yellow leaf moulds (common practice, no source). ${found.lookFor}`,
    sureness: now.foliage.against === 'own' ? 'likely' : 'unsure',
    caution: found.caution,
  };
}
