import { queryOptions } from '@tanstack/react-query';
import type { z } from 'zod';
import type { Show } from '../../../core/season/show.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import type { EntryRow, ShowForm, ShowList, showChangeSchema } from '../../../server/schemas/show.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh, SEASON_KEY } from './queries.ts';

export const showsQuery = queryOptions({
  queryKey: [SEASON_KEY, 'shows'],
  queryFn: ({ signal }) => fetchJson<ShowList>('/shows', { signal }),
});

export async function addShow(form: ShowForm): Promise<Show> {
  const show = await fetchJson<Show>('/shows', { method: 'POST', json: form });
  await refresh();
  return show;
}

/** Changes a show; can be taken back. */
export async function changeShow(show: Show, change: z.input<typeof showChangeSchema>): Promise<void> {
  const put = async (form: object) => {
    await fetchJson<Show>(`/shows/${show.id}`, { method: 'PATCH', json: form });
    await refresh();
  };
  await put(change);
  const { id: _, ...before } = show;
  offerUndo(`${show.name} is changed.`, () => put(before));
}

/** Takes a show away with its entries; can be taken back. */
export async function removeShow(show: Show): Promise<void> {
  await fetchJson(`/shows/${show.id}`, { method: 'DELETE' });
  await refresh();
  offerUndo(`${show.name} is removed, and the plans for it with it.`, async () => {
    await fetchJson(`/shows/${show.id}/restore`, { method: 'POST' });
    await refresh();
  });
}

/** Enters plants for a show, each in the same class; can be taken back. */
export async function enterPlants(
  show: Show,
  plantIds: readonly string[],
  classId: string | null,
): Promise<void> {
  for (const plantId of plantIds) await putEntry({ plantId, showId: show.id, classId, result: '' });
  await refresh();
  const words = plantIds.length === 1 ? 'The plant is' : `${plantIds.length} plants are`;
  offerUndo(`${words} entered for ${show.name}.`, async () => {
    for (const plantId of plantIds) await deleteEntry(plantId, show.id);
    await refresh();
  });
}

/** Changes the class of an entry or what happened on the day; can be taken back. */
export async function changeEntry(
  entry: EntryRow,
  change: Partial<Pick<EntryRow, 'classId' | 'result'>>,
): Promise<void> {
  const { plantId, showId, classId, result } = entry;
  await putEntry({ plantId, showId, classId, result, ...change });
  await refresh();
  offerUndo('The entry is changed.', async () => {
    await putEntry({ plantId, showId, classId, result });
    await refresh();
  });
}

/** Withdraws a plant from a show; can be taken back. */
export async function withdrawPlant(entry: EntryRow, words: string): Promise<void> {
  const { plantId, showId, classId, result } = entry;
  await deleteEntry(plantId, showId);
  await refresh();
  offerUndo(words, async () => {
    await putEntry({ plantId, showId, classId, result });
    await refresh();
  });
}

/** Chooses the show that rules a plant's stops; can be taken back. */
export async function planForShow({ id, aimShowId }: Plant, show: Show): Promise<void> {
  const put = async (showId: string | null) => {
    await fetchJson<Plant>(`/plants/${id}`, { method: 'PATCH', json: { aimShowId: showId } });
    await refresh(id);
  };
  await put(show.id);
  offerUndo(`The stops are planned for ${show.name}.`, () => put(aimShowId));
}

async function putEntry({ plantId, showId, classId, result }: EntryRow): Promise<void> {
  await fetchJson(`/plants/${plantId}/entries/${showId}`, { method: 'PUT', json: { classId, result } });
}

async function deleteEntry(plantId: string, showId: string): Promise<void> {
  await fetchJson(`/plants/${plantId}/entries/${showId}`, { method: 'DELETE' });
}
