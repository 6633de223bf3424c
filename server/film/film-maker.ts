import { randomUUID } from 'node:crypto';
import type { Logger } from 'pino';
import type { FilmFile } from '../schemas/film.ts';
import type { FilmToWrite } from './write-film.ts';

/** A film in memory; `bytes` once it is ready. */
export interface KeptFilm {
  readonly answer: FilmFile;
  readonly bytes: Buffer | null;
}

export interface FilmMaker {
  /** Begins a film; `null` while another one is made. */
  begin(order: FilmOrder): FilmFile | null;
  byId(id: string): KeptFilm | null;
}

export interface FilmOrder extends Omit<FilmToWrite, 'onDrawn'> {
  readonly fileName: string;
  readonly thinnedFrom: number | null;
}

/** Long enough to be saved by a slow phone. */
const KEPT_MS = 15 * 60_000;
/** Films kept at a time: each may have some ten megabytes. */
const MOST_KEPT = 3;

/** Makes films one at a time, and keeps the last few for a while. */
export function createFilmMaker(log: Logger): FilmMaker {
  const films = new Map<string, KeptFilm>();
  let making: string | null = null;

  function change(id: string, next: Partial<FilmFile>, bytes: Buffer | null = null): void {
    const before = films.get(id);
    if (before) films.set(id, { answer: { ...before.answer, ...next }, bytes });
  }

  async function make(id: string, order: FilmOrder): Promise<void> {
    try {
      const { writeFilm } = await import('./write-film.ts');
      const bytes = await writeFilm({
        ...order,
        onDrawn: (drawn) =>
          change(id, { drawn, ...(drawn === order.frames.length ? { state: 'writing' } : {}) }),
      });
      change(id, { state: 'ready', byteCount: bytes.length }, bytes);
    } catch (fault) {
      log.error({ err: fault }, 'making a film broke down');
      change(id, {
        state: 'failed',
        failure:
          'The film could not be written. Try the other format, or fewer photos; nothing else is touched.',
      });
    } finally {
      making = null;
      setTimeout(() => films.delete(id), KEPT_MS).unref();
    }
  }

  return {
    begin(order) {
      if (making !== null) return null;
      const oldest = films.keys().next();
      if (films.size >= MOST_KEPT && !oldest.done) films.delete(oldest.value);
      const id = randomUUID();
      making = id;
      const answer: FilmFile = {
        id,
        state: 'drawing',
        drawn: 0,
        of: order.frames.length,
        thinnedFrom: order.thinnedFrom,
        fileName: order.fileName,
        byteCount: null,
        failure: null,
      };
      films.set(id, { answer, bytes: null });
      void make(id, order);
      return answer;
    },
    byId: (id) => films.get(id) ?? null,
  };
}
