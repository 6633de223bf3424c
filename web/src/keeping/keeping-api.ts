import { queryOptions } from '@tanstack/react-query';
import type { BackupPlanForm, Keeping } from '../../../server/schemas/keeping.ts';
import { fetchJson } from '../api/fetch-json.ts';
import { queryClient } from '../api/queries.ts';

/** While work is under way the desk waits for its end. */
const LOOK_AGAIN_MS = 1_500;

export const keepingQuery = queryOptions({
  queryKey: ['keeping'],
  queryFn: ({ signal }) => fetchJson<Keeping>('/keeping', { signal }),
  refetchInterval: ({ state }) => (state.data?.underWay ? LOOK_AGAIN_MS : false),
});

export async function beginBackup(): Promise<void> {
  show(await fetchJson<Keeping>('/keeping/backups', { method: 'POST' }));
}

/** Reads the store, or the backup of that name, to its end. */
export async function beginCheck(of: string): Promise<void> {
  show(await fetchJson<Keeping>('/keeping/check', { method: 'POST', json: { of } }));
}

export async function beginRestore(name: string): Promise<void> {
  show(await fetchJson<Keeping>(`/keeping/backups/${name}/restore`, { method: 'POST' }));
}

export async function changePlan(plan: BackupPlanForm): Promise<void> {
  show(await fetchJson<Keeping>('/keeping/plan', { method: 'PUT', json: plan }));
}

function show(keeping: Keeping): void {
  queryClient.setQueryData(keepingQuery.queryKey, keeping);
}
