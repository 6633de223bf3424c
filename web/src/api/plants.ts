import type { Plant, PlantForm } from '../../../server/schemas/plant.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';

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
