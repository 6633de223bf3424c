import type { BloomDateAnswer, PlantBloom } from '../../../server/schemas/condition.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';

type Offer = Extract<PlantBloom, { state: 'told' }>['offers'][number];

/** Says yes or no to the offered days of a bloom, all at once; can be taken back. `words` tell what was done. */
export async function answerBloomDates(
  plantId: string,
  offers: readonly Offer[],
  said: 'yes' | 'no',
  words: string,
): Promise<void> {
  const path = `/plants/${plantId}/bloom-dates`;
  const answered: string[] = [];
  const takeBack = async () => {
    // From the last answer on backwards, so that what was refused half-way leaves nothing behind.
    for (const event of answered.toReversed()) await fetchJson(`${path}/${event}`, { method: 'DELETE' });
    await refresh(plantId);
  };
  try {
    for (const { event, day } of offers) {
      await fetchJson<BloomDateAnswer>(path, { method: 'POST', json: { event, day, said } });
      answered.push(event);
    }
  } catch (fault) {
    await takeBack();
    throw fault;
  }
  await refresh(plantId);
  offerUndo(words, takeBack);
}
