import { queryOptions } from '@tanstack/react-query';
import type { View } from '../../../server/schemas/sitting.ts';
import type { HullSolid } from '../../../server/schemas/turned.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';

/** The hull of a sitting; read anew when its views were joined anew, which `version` tells. */
export const hullQuery = (sittingId: string, version: string) =>
  queryOptions({
    queryKey: ['hull', sittingId, version],
    queryFn: ({ signal }) => fetchJson<HullSolid>(`/sittings/${sittingId}/hull`, { signal }),
    staleTime: Number.POSITIVE_INFINITY,
  });

/** Changes the turns of views in one go; can be taken back. */
export async function changeTurns(
  plantId: string,
  views: readonly View[],
  changes: readonly { readonly viewId: string; readonly turnDeg: number | null }[],
  done: string,
): Promise<void> {
  const before = changes.map(({ viewId }) => ({
    viewId,
    turnDeg: views.find(({ id }) => id === viewId)?.turnDeg ?? null,
  }));
  const put = async (turns: typeof changes) => {
    for (const { viewId, turnDeg } of turns) {
      await fetchJson<View>(`/views/${viewId}`, { method: 'PATCH', json: { turnDeg } });
    }
    await refresh(plantId);
  };
  await put(changes);
  offerUndo(done, () => put(before));
}
