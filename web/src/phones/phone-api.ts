import { queryOptions } from '@tanstack/react-query';
import type { Door, DoorCode, Phone, PhoneForm, PhoneList } from '../../../server/schemas/phones.ts';
import { fetchJson } from '../api/fetch-json.ts';
import { queryClient } from '../api/queries.ts';
import { offerUndo } from '../parts/undo.ts';

/** While the desk looks at the list a phone may come in: asked anew so often. */
const LOOK_AGAIN_MS = 2_500;

export const phonesQuery = queryOptions({
  queryKey: ['phones'],
  queryFn: ({ signal }) => fetchJson<PhoneList>('/phones', { signal }),
  refetchInterval: LOOK_AGAIN_MS,
});

export const doorQuery = queryOptions({
  queryKey: ['door'],
  queryFn: ({ signal }) => fetchJson<Door>('/door', { signal }),
});

export function showCode(): Promise<DoorCode> {
  return fetchJson<DoorCode>('/phones/code', { method: 'POST' });
}

export async function comeIn(form: PhoneForm): Promise<void> {
  await fetchJson('/phones', { method: 'POST', json: form });
}

export async function letOut({ id, name }: Phone): Promise<void> {
  await fetchJson(`/phones/${id}`, { method: 'DELETE' });
  await queryClient.invalidateQueries({ queryKey: ['phones'] });
  offerUndo(`${name} is let out.`, async () => {
    await fetchJson(`/phones/${id}/restore`, { method: 'POST' });
    await queryClient.invalidateQueries({ queryKey: ['phones'] });
  });
}
