import { keepPreviousData, queryOptions } from '@tanstack/react-query';
import type { Day } from '../../../core/day/day.ts';
import type { Calendar, PlantYear } from '../../../server/schemas/season.ts';
import { fetchJson } from './fetch-json.ts';
import { SEASON_KEY } from './queries.ts';

/** The season of all plants between two days; what was shown stays until the answer is there. */
export const calendarQuery = (from: Day, to: Day) =>
  queryOptions({
    queryKey: [SEASON_KEY, 'calendar', from, to],
    queryFn: ({ signal }) => fetchJson<Calendar>(`/calendar?from=${from}&to=${to}`, { signal }),
    placeholderData: keepPreviousData,
  });

/** A plant's year; `days` as `?from=…&to=…`, or `''` for the season to its show. */
export const yearQuery = (plantId: string, days: string) =>
  queryOptions({
    queryKey: ['plant', plantId, 'year', days],
    queryFn: ({ signal }) => fetchJson<PlantYear>(`/plants/${plantId}/year${days}`, { signal }),
    placeholderData: keepPreviousData,
  });
