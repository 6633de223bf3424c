import type { Plant } from '../schemas/plant.ts';
import type { PlantRow } from '../store/plants.ts';

/** A plant as the screen gets it. */
export function plantAnswer({ emptyPhoto, ...plant }: PlantRow): Plant {
  return { ...plant, emptyPhotoUrl: emptyPhoto === null ? null : `/api/plants/${plant.id}/empty-photo` };
}
