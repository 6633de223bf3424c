import { useQuery } from '@tanstack/react-query';
import type { EarlierSitting, PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { overlayQuery } from '../api/queries.ts';
import { leavesOf } from '../plant/leafing.ts';
import { onDay, usePageWith } from '../plant/use-page-with.ts';
import { type LayOver, layOverOfView } from './lay-over.ts';

/** What lies over the live picture of a plant: by its stand, else by its newest measured photo. `settled`: nothing better will come. */
export function useLayOver(known: PlantPage): {
  readonly layOver: LayOver | null;
  readonly settled: boolean;
} {
  const older = known.sittings.some(hasMeasured) ? undefined : known.earlier.find(isMeasuredInLine);
  const { page } = usePageWith(known, older ? [onDay(older.day)] : []);
  const { plant, sittings } = page;
  const overlay = useQuery({
    ...overlayQuery(plant.standId ?? '', plant.id),
    enabled: plant.standId !== null,
    retry: false,
  });
  const [newest] = leavesOf(sittings).filter(({ view }) => view.report?.status === 'measured');
  return {
    layOver:
      overlay.data ??
      (newest ? layOverOfView(newest.view, newest.sitting.day as LayOver['outlineDay']) : null),
    settled: plant.standId === null || !overlay.isPending,
  };
}

function hasMeasured({ views }: Sitting): boolean {
  return views.some(({ report }) => report?.status === 'measured');
}

function isMeasuredInLine({ views }: EarlierSitting): boolean {
  return views.some(({ isMeasured }) => isMeasured);
}
