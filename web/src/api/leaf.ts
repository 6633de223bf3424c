import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';

/** Calls the plant's leaf healthy on a day, so that its normal is learned from it, or takes that back; can be undone. */
export async function callLeafHealthy(
  plantId: string,
  day: string,
  healthy: boolean,
  words: string,
): Promise<void> {
  const put = async (isHealthy: boolean) => {
    await fetchJson(`/plants/${plantId}/healthy-days/${day}`, {
      method: 'PUT',
      json: { healthy: isHealthy },
    });
    await refresh(plantId);
  };
  await put(healthy);
  offerUndo(words, () => put(!healthy));
}
