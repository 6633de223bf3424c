import type { Film } from '../../../core/film/cast-film.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import { countWords } from '../words/plant-words.ts';
import { ABSENCE_WORDS } from './film-words.ts';

/** Which photos the film does without, and why. */
export function FilmAbsent({ absent }: Pick<Film, 'absent'>) {
  if (absent.length === 0) return <p>No photo of this side is left out.</p>;
  const today = todayHere();
  return (
    <details>
      <summary>{countWords(absent.length, 'photo')} left out</summary>
      <ul>
        {absent.map(({ photo, absence }) => (
          <li key={photo.id}>
            {dayWords(photo.day, today)}: {ABSENCE_WORDS[absence]}.
          </li>
        ))}
      </ul>
    </details>
  );
}
