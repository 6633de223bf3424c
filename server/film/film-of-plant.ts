import { castFilm, type Film, type FilmChoice } from '../../core/film/cast-film.ts';
import type { FilmPhoto } from '../../core/film/film-photo.ts';
import type { Database } from '../store/database.ts';
import { viewsOfPlant } from '../store/views.ts';

/** A photo of the film with the name of its bytes. */
export interface StoredFilmPhoto extends FilmPhoto {
  readonly sha256: string;
}

/** The film of a plant as the screen shows it; `null` when there is no photo of that side. */
export function filmOfPlant(db: Database, plantId: string, choice: FilmChoice): Film | null {
  const photos = viewsOfPlant(db, plantId)
    .filter(({ afterWork }) => !afterWork)
    .map(
      ({ standId, standVersion, ...view }): StoredFilmPhoto => ({
        id: view.id,
        day: view.day,
        turnDeg: view.turnDeg,
        place: standId === null ? null : `${standId}/${standVersion}`,
        widthPx: view.widthPx,
        heightPx: view.heightPx,
        report: view.report,
        outlinePx: view.outlinePx ?? [],
        leftOut: view.leftOut,
        sha256: view.sha256,
      }),
    );
  return castFilm(photos, choice);
}
