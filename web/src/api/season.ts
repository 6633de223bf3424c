import { queryOptions } from '@tanstack/react-query';
import type { Defaults, PlantSeasonAnswer } from '../../../server/schemas/season.ts';
import type { SeasonNoteForm, SeasonNoteRow } from '../../../server/schemas/season-note.ts';
import type { OwnWorkForm, OwnWorkRow } from '../../../server/schemas/work.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh, SEASON_KEY } from './queries.ts';

export const plantSeasonQuery = (plantId: string) =>
  queryOptions({
    queryKey: ['plant', plantId, 'season'],
    queryFn: ({ signal }) => fetchJson<PlantSeasonAnswer>(`/plants/${plantId}/season`, { signal }),
  });

export const defaultsQuery = queryOptions({
  queryKey: [SEASON_KEY, 'defaults'],
  queryFn: ({ signal }) => fetchJson<Defaults>('/defaults', { signal }),
});

type EditableFigure = Defaults['figures'][number];

/** Lays a figure of the grower's own over the table, or with `null` goes back to the default; can be taken back. */
export async function setOwnFigure(before: EditableFigure, value: number | null): Promise<void> {
  const put = async (own: number | null) => {
    await fetchJson<Defaults>(`/defaults/${before.key}`, { method: 'PUT', json: { value: own } });
    await refresh();
  };
  await put(value);
  const label = before.label;
  offerUndo(
    value === null ? `${label}: back to the default.` : `${label}: your own figure counts from now on.`,
    () => put(before.isOwn ? (before.figure?.value ?? null) : null),
  );
}

/** Adds a word on a season when `noteId` is null, else writes it anew. */
export async function saveSeasonNote(noteId: string | null, form: SeasonNoteForm): Promise<void> {
  const path = noteId === null ? '/season-notes' : `/season-notes/${noteId}`;
  await fetchJson<SeasonNoteRow>(path, { method: noteId === null ? 'POST' : 'PUT', json: form });
  await refresh();
}

export async function removeSeasonNote(noteId: string): Promise<void> {
  await fetchJson(`/season-notes/${noteId}`, { method: 'DELETE' });
  await refresh();
  offerUndo('The note on the season is removed.', async () => {
    await fetchJson(`/season-notes/${noteId}/restore`, { method: 'POST' });
    await refresh();
  });
}

/** Adds work of the grower's own when `workId` is null, else changes it. */
export async function saveOwnWork(plantId: string, workId: string | null, form: OwnWorkForm): Promise<void> {
  const path = workId === null ? `/plants/${plantId}/own-work` : `/own-work/${workId}`;
  await fetchJson<OwnWorkRow>(path, { method: workId === null ? 'POST' : 'PATCH', json: form });
  await refresh(plantId);
}

export async function removeOwnWork({ id, plantId }: OwnWorkRow): Promise<void> {
  await fetchJson(`/own-work/${id}`, { method: 'DELETE' });
  await refresh(plantId);
  offerUndo('Your work is removed.', async () => {
    await fetchJson(`/own-work/${id}/restore`, { method: 'POST' });
    await refresh(plantId);
  });
}
