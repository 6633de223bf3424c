import { facesAfterUsualTurn } from '../../../core/light/usual-turn.ts';
import { sideWords } from '../../../core/turned/place-words.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { recordTurn } from '../api/turns.ts';
import { dayWords, todayHere } from '../words/day-words.ts';

/**
 * Writes down the turn that is advised, or else the rhythm's.
 *
 * @param page of a plant whose side to the light is known; throws a `TypeError` otherwise
 */
export async function recordUsualTurn({ plant, light }: PlantPage, day: string): Promise<void> {
  const facesLightDeg = facesAfterUsualTurn({ ...light, rhythm: plant.turnRhythm });
  if (facesLightDeg === null) throw new TypeError('Expected a side that faces the light but received null');
  const today = todayHere();
  const since = day === today ? 'today' : dayWords(day, today);
  const words = `Written down: ${sideWords(facesLightDeg)} faces the light from ${since}.`;
  await recordTurn(plant.id, { day, facesLightDeg }, words);
}
