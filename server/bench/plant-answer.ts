import type { Plant } from '../schemas/plant.ts';
import type { AimedPlant } from './aimed-plant.ts';

/** A plant as the screen gets it. */
export function plantAnswer({ emptyPhoto, ...plant }: AimedPlant): Plant {
  return { ...plant, emptyPhotoUrl: emptyPhoto === null ? null : `/api/plants/${plant.id}/empty-photo` };
}
