import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';

export type DiaryKind = 'stops' | 'notes';

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
