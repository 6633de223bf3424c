import type { Stand, StandChange, StandForm, StandPlace } from '../../../server/schemas/stand.ts';
import { announce, offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { changePlant } from './plants.ts';
import { queryClient, refresh, standsQuery } from './queries.ts';

/** After a change of a stand: its own pages, and every plant, whose numbers may be taken anew. */
async function refreshStands(): Promise<void> {
  await Promise.all([queryClient.invalidateQueries({ queryKey: standsQuery.queryKey }), refresh()]);
}

export async function createStand(form: StandForm & StandPlace): Promise<Stand> {
  const stand = await fetchJson<Stand>('/stands', { method: 'POST', json: form });
  await refreshStands();
  return stand;
}

export async function changeStand(standId: string, change: StandChange): Promise<Stand> {
  const stand = await fetchJson<Stand>(`/stands/${standId}`, { method: 'PATCH', json: change });
  await refreshStands();
  return stand;
}

export async function putStandAway(stand: Stand): Promise<void> {
  await fetchJson<Stand>(`/stands/${stand.id}/put-away`, { method: 'POST' });
  await refreshStands();
  offerUndo(`The stand ${stand.name} is put away.`, () => bringStandBack(stand));
}

export async function bringStandBack(stand: Stand): Promise<void> {
  await fetchJson<Stand>(`/stands/${stand.id}/bring-back`, { method: 'POST' });
  await refreshStands();
}

/** Sends the empty photo; the answer carries the check of it. */
export async function setStandEmptyPhoto(standId: string, file: File): Promise<Stand> {
  const body = new FormData();
  const { appendTold } = await import('../photos/append-told.ts');
  await appendTold(body, 'photo', file);
  const stand = await fetchJson<Stand>(`/stands/${standId}/empty-photo`, { method: 'PUT', body });
  await refreshStands();
  return stand;
}

export async function removeStandEmptyPhoto(standId: string): Promise<void> {
  await fetchJson<Stand>(`/stands/${standId}/empty-photo`, { method: 'DELETE' });
  await refreshStands();
}

/** Puts a plant on a stand, or on none. Photos already taken stay with the stand they were taken on. */
export async function chooseStand(plantId: string, stand: Stand | null): Promise<void> {
  await changePlant(plantId, { standId: stand?.id ?? null });
  announce(
    stand ? `New photos are taken on the stand ${stand.name}.` : 'New photos are taken without a stand.',
  );
}
