import { notifyManager, QueryClient, queryOptions } from '@tanstack/react-query';
import type { Bench, PlantPage } from '../../../server/schemas/pages.ts';
import type { Stand, StandOverlay } from '../../../server/schemas/stand.ts';
import { fetchJson, Refusal } from './fetch-json.ts';
import { fetchOrLast } from './last-answers.ts';

// A change is shown within the same task. After the usual timer a box just ticked would first be put back to what was kept.
notifyManager.setScheduler(queueMicrotask);

export const queryClient = new QueryClient({
  defaultOptions: {
    queries: {
      staleTime: 5_000,
      // Asked without a network too: the last answer may be kept on the device, and the server on the same one.
      networkMode: 'always',
      retry: (tries, fault) =>
        tries < 2 && !(fault instanceof Refusal && fault.status >= 400 && fault.status < 500),
    },
  },
});

export const benchQuery = queryOptions({
  queryKey: ['bench'],
  queryFn: ({ signal }) => fetchOrLast<Bench>('/bench', { signal }),
});

/** So many of a plant's newest sittings come whole with its page; older ones are fetched when they are looked at. */
const WHOLE_SITTINGS = 6;

export const plantPath = (plantId: string) => `/plants/${plantId}?sittings=${WHOLE_SITTINGS}`;

export const plantQuery = (plantId: string) =>
  queryOptions({
    queryKey: ['plant', plantId],
    queryFn: ({ signal }) => fetchOrLast<PlantPage>(plantPath(plantId), { signal }),
  });

export const standsQuery = queryOptions({
  queryKey: ['stands'],
  queryFn: ({ signal }) => fetchOrLast<Stand[]>('/stands', { signal }),
});

export const overlayQuery = (standId: string, plantId: string) =>
  queryOptions({
    queryKey: ['plant', plantId, 'overlay', standId],
    queryFn: ({ signal }) =>
      fetchJson<StandOverlay>(`/stands/${standId}/overlay?plant=${plantId}`, { signal }),
  });

/** What concerns the season of all plants (shows, calendar, work, figures) is kept under this key. */
export const SEASON_KEY = 'season';

/** After a change: the plant's page, the season of all and the bench are read anew, the bench even when it is not in sight. */
export async function refresh(plantId?: string): Promise<void> {
  await Promise.all([
    queryClient.invalidateQueries({ queryKey: ['bench'], refetchType: 'all' }),
    queryClient.invalidateQueries({ queryKey: plantId ? ['plant', plantId] : ['plant'] }),
    queryClient.invalidateQueries({ queryKey: [SEASON_KEY] }),
  ]);
}
