import { setImmediate } from 'node:timers/promises';
import { type AimedPlant, allAimedPlants } from '../bench/aimed-plant.ts';
import type { Database } from '../store/database.ts';
import type { SeasonFacts } from './season-facts.ts';

/** Nobody else is kept waiting longer, but for one plant's answer. */
const TURN_MS = 10;

/**
 * Reckons something of every plant on the bench and gives other requests their turn meanwhile.
 *
 * @param facts as they are now; asked for anew after each turn of others
 * @param each remembers what it reckoned of a plant (`rememberingPlants`)
 * @returns the answers as they are together at one moment, in the order of the plants
 */
export async function inTurns<Answer>(
  db: Database,
  facts: () => SeasonFacts,
  each: (facts: SeasonFacts, plant: AimedPlant) => Answer,
): Promise<Answer[]> {
  const look = () => {
    const known = facts();
    const plants = allAimedPlants(db, known.today).filter(({ putAway }) => !putAway);
    return { known, plants: new Map(plants.map((plant) => [plant.id, plant])) };
  };
  let now = look();
  let begun = performance.now();
  let isOneMoment = true;
  const answers: Answer[] = [];
  for (const id of [...now.plants.keys()]) {
    const plant = now.plants.get(id);
    if (plant !== undefined) answers.push(each(now.known, plant));
    if (performance.now() - begun < TURN_MS) continue;
    await setImmediate();
    now = look();
    begun = performance.now();
    isOneMoment = false;
  }
  // What others wrote meanwhile is reckoned now, all else is remembered.
  return isOneMoment ? answers : [...now.plants.values()].map((plant) => each(now.known, plant));
}
