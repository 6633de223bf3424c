import type { CutList } from '../../../server/schemas/cuts.ts';

/** Where the plant is photographed again as the list's photos were: from all round, or in one photo. */
export function photographPath({ plantId, from, sittingId, day }: CutList, today: string): string {
  if (from !== 'turned') return `/plants/${plantId}?add-photos`;
  // On the list's own day the same sitting goes on, its shots taken once more.
  return day === today ? `/plants/${plantId}/turned?after=${sittingId}` : `/plants/${plantId}/turned`;
}
