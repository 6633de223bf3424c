import type { CutList } from '../../../server/schemas/cuts.ts';

/** Where the plant is photographed again as the list's photos were: from all round, or in one photo. */
export function photographPath({ plantId, from }: CutList): string {
  return from === 'turned' ? `/plants/${plantId}/turned` : `/plants/${plantId}?add-photos`;
}
