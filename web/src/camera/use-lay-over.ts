import { useQuery } from '@tanstack/react-query';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { overlayQuery } from '../api/queries.ts';
import { leavesOf } from '../plant/leafing.ts';
import { type LayOver, layOverOfView } from './lay-over.ts';

/** What lies over the live picture of a plant: by its stand, else by its newest measured photo. `settled`: nothing better will come. */
export function useLayOver({ plant, sittings }: PlantPage): {
  readonly layOver: LayOver | null;
  readonly settled: boolean;
} {
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
