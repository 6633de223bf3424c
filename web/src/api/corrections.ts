import type { Plant } from '../../../server/schemas/plant.ts';
import type { Sitting, View } from '../../../server/schemas/sitting.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';

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

export async function setEmptyPhoto(plantId: string, file: File): Promise<void> {
  const body = new FormData();
  const { appendTold } = await import('../photos/append-told.ts');
  await appendTold(body, 'photo', file);
  await fetchJson<Plant>(`/plants/${plantId}/empty-photo`, { method: 'PUT', body });
  await refresh(plantId);
}

export async function removeEmptyPhoto(plantId: string): Promise<void> {
  await fetchJson<Plant>(`/plants/${plantId}/empty-photo`, { method: 'DELETE' });
  await refresh(plantId);
}
