import type { EarlierSitting } from '../../../server/schemas/pages.ts';
import type { Sitting, View } from '../../../server/schemas/sitting.ts';

/** Sittings that can have a cut list, newest first: a photo of them was measured or is on its way. */
export function listedSittings(sittings: readonly Sitting[]): Sitting[] {
  return sittings.filter(({ views }) => views.some((view) => isMeasured(view) && !view.afterWork));
}

/** The same among sittings that are known in a line each. */
export function earlierListed(earlier: readonly EarlierSitting[]): EarlierSitting[] {
  return earlier.filter(({ views }) =>
    views.some(
      ({ state, isMeasured: measured, afterWork }) => state === 'measured' && measured && !afterWork,
    ),
  );
}

export function isMeasured({ state, report }: View): boolean {
  return state === 'measured' && report?.status === 'measured';
}

/** The views of a list, in its order. */
export function viewsOf(sitting: Sitting, viewIds: readonly string[]): View[] {
  return viewIds.flatMap((id) => sitting.views.filter((view) => view.id === id));
}
