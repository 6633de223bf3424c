import { day } from '../../../core/day/day.ts';
import type { FilmPhoto } from '../../../core/film/film-photo.ts';
import type { Sitting, View } from '../../../server/schemas/sitting.ts';

/** A photo of the film with its picture and what is drawn on it. */
export interface FilmView extends FilmPhoto {
  readonly view: View;
}

/** All photos of a plant that may come into its film. */
export function filmPhotos(sittings: readonly Sitting[]): FilmView[] {
  return sittings.flatMap((sitting) =>
    sitting.views
      // What was photographed after the work stands beside the sitting, not in the run of weeks.
      .filter(({ afterWork }) => !afterWork)
      .map((view) => ({
        id: view.id,
        day: day(sitting.day),
        turnDeg: view.turnDeg,
        place: placeOf(view),
        widthPx: view.widthPx,
        heightPx: view.heightPx,
        report: view.report,
        outlinePx: view.outlinePx,
        leftOut: sitting.leftOut,
        view,
      })),
  );
}

/** Stand and version as one name; `null` for no stand. */
export function placeOf({ standId, standVersion }: Pick<View, 'standId' | 'standVersion'>): string | null {
  return standId === null ? null : `${standId}/${standVersion}`;
}

/** The picture that is shown while the film runs, and the larger one for when it stands. */
export function runningPicture({ pictureUrl }: Pick<View, 'pictureUrl'>): string {
  return `${pictureUrl}?width=800`;
}
export function standingPicture({ pictureUrl }: Pick<View, 'pictureUrl'>): string {
  return `${pictureUrl}?width=1600`;
}
