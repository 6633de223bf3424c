import type { Plant, PlantForm } from '../../../server/schemas/plant.ts';
import type { Sitting, View } from '../../../server/schemas/sitting.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';

export type DiaryKind = 'stops' | 'notes';

export async function createPlant(form: PlantForm): Promise<Plant> {
  const plant = await fetchJson<Plant>('/plants', { method: 'POST', json: form });
  await refresh();
  return plant;
}

export async function changePlant(plantId: string, form: Partial<PlantForm>): Promise<void> {
  await fetchJson<Plant>(`/plants/${plantId}`, { method: 'PATCH', json: form });
  await refresh(plantId);
}

export async function putPlantAway(plant: Plant): Promise<void> {
  const put = async (putAway: boolean) => {
    await fetchJson(`/plants/${plant.id}`, { method: 'PATCH', json: { putAway } });
    await refresh(plant.id);
  };
  await put(true);
  offerUndo(`${plant.name} is put away.`, () => put(false));
}

export async function bringPlantBack(plant: Plant): Promise<void> {
  await fetchJson(`/plants/${plant.id}`, { method: 'PATCH', json: { putAway: false } });
  await refresh(plant.id);
}

export async function putSampleAway(): Promise<void> {
  await fetchJson('/sample/put-away', { method: 'POST' });
  await refresh();
  offerUndo('The sample plants are put away.', bringSampleBack);
}

export async function bringSampleBack(): Promise<void> {
  await fetchJson('/sample/bring-back', { method: 'POST' });
  await refresh();
}

/** What is corrected of a photo; day `null`: the one that the camera wrote, turn `null`: not told. */
export interface ViewCorrection {
  readonly day?: string | null;
  readonly turnDeg?: number | null;
}

/** Corrects a photo's day or turn; can be taken back. */
export async function correctView(
  plantId: string,
  { view, sitting }: { readonly view: View; readonly sitting: Sitting },
  change: ViewCorrection,
): Promise<void> {
  const put = async (json: ViewCorrection) => {
    await fetchJson<View>(`/views/${view.id}`, { method: 'PATCH', json });
    await refresh(plantId);
  };
  await put(change);
  const before: ViewCorrection = {
    ...(change.day === undefined ? {} : { day: view.takenFrom === 'exif' ? null : sitting.day }),
    ...(change.turnDeg === undefined ? {} : { turnDeg: view.turnFrom === 'collar' ? null : view.turnDeg }),
  };
  if (Object.keys(before).length > 0) offerUndo('The photo is corrected.', () => put(before));
}

export async function measureAnew(plantId: string, viewId: string): Promise<void> {
  await fetchJson<View>(`/views/${viewId}/measure`, { method: 'POST' });
  await refresh(plantId);
}

export async function removeView(plantId: string, view: View): Promise<void> {
  await fetchJson(`/views/${view.id}`, { method: 'DELETE' });
  await refresh(plantId);
  offerUndo(`The photo ${view.fileName} is removed.`, async () => {
    await fetchJson(`/views/${view.id}/restore`, { method: 'POST' });
    await refresh(plantId);
  });
}

/** Adds an entry when `entryId` is null, else changes it. */
export async function saveEntry(
  plantId: string,
  kind: DiaryKind,
  entryId: string | null,
  form: Record<string, string>,
): Promise<void> {
  const path = entryId ? `/${kind}/${entryId}` : `/plants/${plantId}/${kind}`;
  await fetchJson(path, { method: entryId ? 'PATCH' : 'POST', json: form });
  await refresh(plantId);
}

export async function removeEntry(plantId: string, kind: DiaryKind, entryId: string): Promise<void> {
  await fetchJson(`/${kind}/${entryId}`, { method: 'DELETE' });
  await refresh(plantId);
  offerUndo(kind === 'stops' ? 'The stop is removed.' : 'The line is removed from the log.', async () => {
    await fetchJson(`/${kind}/${entryId}/restore`, { method: 'POST' });
    await refresh(plantId);
  });
}

export async function setEmptyPhoto(plantId: string, file: File): Promise<void> {
  const body = new FormData();
  body.set('photo', file);
  await fetchJson<Plant>(`/plants/${plantId}/empty-photo`, { method: 'PUT', body });
  await refresh(plantId);
}

export async function removeEmptyPhoto(plantId: string): Promise<void> {
  await fetchJson<Plant>(`/plants/${plantId}/empty-photo`, { method: 'DELETE' });
  await refresh(plantId);
}
