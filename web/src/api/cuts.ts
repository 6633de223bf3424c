import { queryOptions } from '@tanstack/react-query';
import type { CutTo } from '../../../server/schemas/cut-to.ts';
import type { CutList, CutMark } from '../../../server/schemas/cuts.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson, Refusal } from './fetch-json.ts';
import { refresh } from './queries.ts';

/** A photo is being measured or joined: the list is asked for again by itself. */
export function isLater(fault: unknown): boolean {
  return fault instanceof Refusal && fault.status === 409;
}

const ASK_AGAIN_MS = 2_000;

export const cutListQuery = (plantId: string, sittingId: string) =>
  queryOptions({
    queryKey: ['plant', plantId, 'cut-list', sittingId],
    queryFn: ({ signal }) => fetchJson<CutList>(`/sittings/${sittingId}/cut-list`, { signal }),
    refetchInterval: ({ state }) => (isLater(state.error) ? ASK_AGAIN_MS : false),
  });

/** What is changed of a cut; the rest stays. */
export type CutMarkChange = Partial<CutMark>;

/** Sends what was done or written of one cut; answers with the whole list anew. */
export function sendCutMark(sittingId: string, cutId: string, change: CutMarkChange): Promise<CutList> {
  return fetchJson<CutList>(`/sittings/${sittingId}/cuts/${encodeURIComponent(cutId)}`, {
    method: 'PATCH',
    json: change,
  });
}

/** Chooses the ball to cut to, with the show's day where that is set along; can be taken back. */
export async function changeCutTo(
  plant: Plant,
  change: { readonly cutTo: CutTo; readonly showDay?: string },
): Promise<void> {
  const put = async (form: { cutTo: CutTo; showDay?: string | null }) => {
    await fetchJson<Plant>(`/plants/${plant.id}`, { method: 'PATCH', json: form });
    await refresh(plant.id);
  };
  await put(change);
  offerUndo('Another ball is cut to. The list follows it.', () =>
    put({ cutTo: plant.cutTo, ...(change.showDay === undefined ? {} : { showDay: plant.showDay }) }),
  );
}
