import { setImmediate } from 'node:timers/promises';
import { type AimedPlant, allAimedPlants } from '../bench/aimed-plant.ts';
import type { Database } from '../store/database.ts';
import type { SeasonFacts } from './season-facts.ts';

/** Nobody else is kept waiting longer, but for one plant's answer. */
const TURN_MS = 10;
/** Where something is written all the time, the last of it is reckoned in one go. */
const MOST_ROUNDS = 8;

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
  for (let round = 0; round < MOST_ROUNDS; round++) {
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
    if (isOneMoment) return answers;
    // Another round reckons what was written meanwhile; all else is remembered.
  }
  return [...now.plants.values()].map((plant) => each(now.known, plant));
}
