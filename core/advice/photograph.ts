import { daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { Advice } from './advice.ts';
import { newestComparable, newestMeasured, newestSitting, type PlantHistory } from './plant-history.ts';

/** Weekly photos, with a few days' grace. */
const LONGEST_GAP_DAYS = 10;

/**
 * Asks for a photo: the first one, the next one when more than ten days have gone by, a better one, one from where the camera stood before,
 * or one in the place of a sitting that the grower left out.
 */
export function photograph(history: PlantHistory): Advice | null {
  const newest = newestSitting(history);
  if (newest === null) {
    return ask(1, 'Take the first photo.', 'Nothing is known of its shape yet.');
  }
  const days = daysBetween(newest.day, history.today);
  if (days > LONGEST_GAP_DAYS) {
    return ask(
      2,
      'Photograph it again.',
      `The newest photo is ${days} days old, of ${dayInWords(newest.day)}.`,
    );
  }
  if (newest.leftOut != null) {
    const why = `The sitting of ${dayInWords(newest.day)} is left out by you: ${newest.leftOut}.`;
    return ask(2, 'Photograph it again once it stands as it should.', why);
  }
  // A sitting without reports is still being measured.
  if (newest.reports.length === 0 || newestComparable(history) !== null) return null;
  const fromElsewhere = newestMeasured(history)?.reports[0]?.notCompared ?? null;
  if (fromElsewhere !== null) {
    const why = `The scores of ${dayInWords(newest.day)} are left out of the trend, and no advice rests on them. ${fromElsewhere}`;
    return ask(2, 'Take the photo again from the camera’s old place.', why);
  }
  const hint = newest.reports.find((report) => report.hint !== null)?.hint ?? '';
  return {
    ...ask(2, 'Take the photo again.', `The photo of ${dayInWords(newest.day)} could not be measured.`),
    howMuch: hint === '' ? null : hint,
  };
}

function ask(urgency: Advice['urgency'], what: string, why: string): Advice {
  return {
    kind: 'photograph',
    urgency,
    what,
    where: 'From the fixed camera place, the mark to the camera, before turning the pot.',
    howMuch: null,
    why,
    sureness: 'sure',
    caution: null,
  };
}
