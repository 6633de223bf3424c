import { useMemo, useState } from 'react';
import type { Film } from '../../../core/film/cast-film.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { createKeptStore } from '../parts/store.ts';
import { agoWords, dayWords, todayHere } from '../words/day-words.ts';
import { FilmAbsent } from './FilmAbsent.tsx';
import { FilmBar } from './FilmBar.tsx';
import { FilmControls } from './FilmControls.tsx';
import styles from './FilmDesk.module.css';
import { FilmHappenings } from './FilmHappenings.tsx';
import { FILM_LINES, type FilmLine, FilmStage } from './FilmStage.tsx';
import { filmMarks, marksUpTo } from './film-marks.ts';
import { type FilmView, runningPicture } from './film-photos.ts';
import { HELD_WORDS, SPEEDS, type Speed, sideWords } from './film-words.ts';
import { SaveFilm } from './SaveFilm.tsx';
import { useLoaded } from './use-loaded.ts';
import { useFilmKeys, usePlaying, useRunning } from './use-playing.ts';

/** Which lines are drawn on the film; kept on this device. */
const filmLines = createKeptStore<readonly FilmLine[]>(
  'rondure.film-lines',
  [],
  (kept): kept is readonly FilmLine[] => Array.isArray(kept) && kept.every((one) => FILM_LINES.includes(one)),
);

/** Pictures fetched ahead of the one shown; as many as half a second of the fastest film needs. */
const AHEAD = 5;

/** The film with its bar, what was done beside it, and what it does without. */
export function FilmDesk({ page, film }: { page: PlantPage; film: Film }) {
  const [speed, setSpeed] = useState<Speed>('middle');
  const lines = filmLines.useValue();
  const days = film.frames.map(({ photo }) => photo.day);
  const pictures = film.frames.map(({ photo }) => runningPicture((photo as FilmView).view));
  const playing = usePlaying(days.length);
  useFilmKeys(playing, days.length);
  const { index, isPlaying, goTo } = playing;
  const wanted = pictures.slice(Math.max(index - 1, 0), index + 1 + AHEAD).join(' ');
  const loaded = useLoaded(useMemo(() => wanted.split(' '), [wanted]));
  const isReady = loaded.has(pictures[index] ?? '') && loaded.has(pictures[index + 1] ?? '');
  useRunning(playing, isReady, SPEEDS[speed]);

  const today = todayHere();
  const day = days[index] ?? days[0] ?? today;
  const held = (['stand', 'rim', 'edges'] as const).filter((by) =>
    film.frames.some((frame) => frame.heldBy === by),
  );
  const marks = filmMarks(page, days);
  // What was done twice between two pictures is named once; the list below has both.
  const now = [...new Set(marksUpTo(marks, index).map(({ words }) => words))];
  return (
    <div className={styles.desk}>
      <section aria-label="Film" className={styles.film}>
        <FilmStage
          film={film}
          index={index}
          isPlaying={isPlaying}
          lines={lines}
          label={`${page.plant.name}, ${dayWords(day, today)}, ${sideWords(film.sideDeg)}`}
        />
        <p className={styles.day} aria-live={isPlaying ? 'off' : 'polite'}>
          <b>{dayWords(day, today)}</b>, {agoWords(day, today)}. Picture {index + 1} of {days.length}.{' '}
          <span className={styles.now}>{now.length > 0 && `${now.join(', ')}.`}</span>
          {loaded.get(pictures[index] ?? '') === 'broken' &&
            ' This picture did not come; see that the server runs.'}
        </p>
        {days.length > 1 ? (
          <>
            <FilmBar days={days} index={index} marks={marks} onGoTo={goTo} />
            <FilmControls
              playing={playing}
              count={days.length}
              speed={speed}
              onSpeed={setSpeed}
              lines={lines}
              onLines={filmLines.write}
            />
          </>
        ) : (
          <p>One picture is no film yet. The next photo from the same camera place makes it one.</p>
        )}
      </section>
      <div className={styles.beside}>
        <section aria-labelledby="film-done">
          <h2 id="film-done">In this time</h2>
          <FilmHappenings marks={marks} index={index} onGoTo={goTo} />
        </section>
        {days.length > 1 && (
          <section aria-labelledby="film-save" className={styles.held}>
            <h2 id="film-save">Take it along</h2>
            <SaveFilm plantId={page.plant.id} film={film} perSecond={SPEEDS[speed]} />
          </section>
        )}
        <section aria-labelledby="film-held" className={styles.held}>
          <h2 id="film-held">How it is laid</h2>
          <p>{held.map((by) => HELD_WORDS[by]).join(' ')}</p>
          <FilmAbsent absent={film.absent} />
        </section>
      </div>
    </div>
  );
}
