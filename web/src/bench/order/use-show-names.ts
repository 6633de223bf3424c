import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { showsQuery } from '../../api/shows.ts';
import type { BenchRow } from '../need-groups.ts';

/** Names of the shows that plants of the bench are grown for, by id, the nearest first. */
export function useShowNames(rows: readonly BenchRow[]): ReadonlyMap<string, string> {
  const { data } = useQuery(showsQuery);
  return useMemo(() => {
    const wanted = new Set(rows.map(({ plant }) => plant.showId));
    const shows = (data?.shows ?? []).map(({ show }) => show).filter(({ id }) => wanted.has(id));
    return new Map(shows.map(({ id, name }) => [id, name]));
  }, [data, rows]);
}
