import type { FilmFile, FilmFormat } from '../../../server/schemas/film.ts';
import { fetchJson, Refusal } from './fetch-json.ts';

const ASK_AGAIN_MS = 500;

/** Which film is to be written. */
export interface FilmOrder {
  readonly sideDeg: number;
  readonly place: string | null;
  readonly format: FilmFormat;
  readonly perSecond: number;
}

/** Has a plant's film written by the server; resolves when it is ready. `onProgress` hears how far it is. */
export async function makeFilm(
  plantId: string,
  order: FilmOrder,
  onProgress: (film: FilmFile) => void,
): Promise<FilmFile> {
  let film = await fetchJson<FilmFile>(`/plants/${plantId}/films`, { method: 'POST', json: order });
  while (film.state === 'drawing' || film.state === 'writing') {
    onProgress(film);
    await new Promise((resolve) => window.setTimeout(resolve, ASK_AGAIN_MS));
    film = await fetchJson<FilmFile>(`/films/${film.id}`);
  }
  if (film.state === 'failed') throw new Refusal({ status: 500, detail: film.failure ?? '' });
  return film;
}

/** Lets the browser save a file of the server's. */
export function saveFrom(address: string, fileName: string): void {
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
}
