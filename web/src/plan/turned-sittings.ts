import { wholeTurn } from '../../../core/turned/circular-statistics.ts';
import type { PlantLight } from '../../../server/schemas/light.ts';
import type { Sitting, View } from '../../../server/schemas/sitting.ts';

type JoinedSitting = Sitting & { readonly turned: NonNullable<Sitting['turned']> };

/** The views in the order in which the report's faults and words count them. */
export function countedViews(sitting: Sitting): View[] {
  return sitting.turnedViewIds.flatMap((id) => sitting.views.filter((view) => view.id === id));
}

/** Sittings before this one whose plan has a reach to lay under it, the newest first. */
export function earlierPlans(sittings: readonly Sitting[], current: Sitting): JoinedSitting[] {
  return sittings
    .filter(
      (one): one is JoinedSitting =>
        one.day < current.day && one.turned !== null && one.turned.plan.reach.length > 0,
    )
    .sort((a, b) => (a.day < b.day ? 1 : -1));
}

/** Which side of the plant faces the light, and how that is known. */
export interface LitAzimuth {
  readonly azimuthDeg: number;
  readonly words: string;
}

/** By the recorded turns, else as it is when the mark faces the camera; `null` when the light's side is not set. */
export function litAzimuth({ ledger, fromCameraDeg }: PlantLight): LitAzimuth | null {
  if (ledger.nowFacesDeg !== null) {
    return { azimuthDeg: ledger.nowFacesDeg, words: 'Light, as the pot stands by the record' };
  }
  if (fromCameraDeg === null) return null;
  return { azimuthDeg: wholeTurn(fromCameraDeg), words: 'Light, when the mark faces the camera' };
}
