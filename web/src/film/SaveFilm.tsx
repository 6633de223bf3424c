import { useState } from 'react';
import type { Film } from '../../../core/film/cast-film.ts';
import type { FilmFile, FilmFormat } from '../../../server/schemas/film.ts';
import { makeFilm, saveFrom } from '../api/films.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';

const FORMATS: readonly { readonly format: FilmFormat; readonly words: string }[] = [
  { format: 'webp', words: 'Save as WebP' },
  { format: 'gif', words: 'Save as GIF' },
];

/** Has the film written as a file, with the day in each picture, and saves it. */
export function SaveFilm({ plantId, film, perSecond }: { plantId: string; film: Film; perSecond: number }) {
  const { busy, fault, send } = useSending();
  const [told, tell] = useState('');
  const save = (format: FilmFormat) =>
    send(async () => {
      tell('Beginning…');
      try {
        const order = { sideDeg: film.sideDeg, place: film.place, format, perSecond };
        const made = await makeFilm(plantId, order, (state) => tell(progressWords(state)));
        saveFrom(`/api/films/${made.id}/file`, made.fileName);
        tell(readyWords(made));
      } catch (refused) {
        tell('');
        throw refused;
      }
    });
  return (
    <>
      <div className={buttons.row}>
        {FORMATS.map(({ format, words }) => (
          <button
            key={format}
            type="button"
            className={buttons.quiet}
            disabled={busy}
            onClick={() => save(format)}
          >
            <Icon name="save" /> {words}
          </button>
        ))}
      </div>
      <p role="status">{told || 'The day stands in each picture; no camera data or place goes along.'}</p>
      {fault !== null && <Fault fault={fault} />}
    </>
  );
}

function progressWords({ state, drawn, of }: FilmFile): string {
  return state === 'writing' ? 'Writing the file…' : `Drawing picture ${Math.min(drawn + 1, of)} of ${of}…`;
}

function readyWords({ fileName, byteCount, of, thinnedFrom }: FilmFile): string {
  const size = byteCount === null ? '' : `, ${(byteCount / 1_000_000).toFixed(1)} MB`;
  const fewer = thinnedFrom === null ? '' : ` ${of} of ${thinnedFrom} pictures are in it, evenly chosen.`;
  return `Saved as ${fileName}${size}.${fewer}`;
}
