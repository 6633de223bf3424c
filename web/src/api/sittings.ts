import { queryOptions } from '@tanstack/react-query';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { fetchOrLast } from './last-answers.ts';

/** A stretch of days, both included. */
export interface Days {
  readonly from: string;
  readonly to: string;
}

/** A plant's sittings of some days, whole, newest first. */
export const sittingsQuery = (plantId: string, { from, to }: Days) =>
  queryOptions({
    queryKey: ['plant', plantId, 'sittings', from, to],
    queryFn: ({ signal }) =>
      fetchOrLast<Sitting[]>(`/plants/${plantId}/sittings?from=${from}&to=${to}`, { signal }),
  });
