import { Link } from 'wouter';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import fold from '../parts/twin.module.css';
import { compassWords } from '../words/compass-words.ts';
import { shortDayWords } from '../words/day-words.ts';
import { hoursWords } from './light-words.ts';
import styles from './SeasonOfLight.module.css';

type SunDay = NonNullable<PlantPage['light']['season']>[number];

/** How the side of the light and the length of the day move over the season; or what is needed to know it. */
export function SeasonOfLight({ page }: { page: PlantPage }) {
  const { season } = page.light;
  if (season === null || season.length === 0) {
    const { standId } = page.plant;
    return (
      <p className={styles.need}>
        How the light moves over the season is known once the stand has its latitude.{' '}
        <Link href={standId ? `/stands/${standId}/set-up?step=place` : '/stands'}>
          {standId ? 'Give the latitude' : 'To the stands'}
        </Link>
      </p>
    );
  }
  return (
    <details className={fold.twin}>
      <summary>The light over the season</summary>
      <p className={styles.need}>
        Direct sun under a clear sky and a level horizon. The arrow shows where it comes from on the whole,
        north on top; the bar is the length of the day.
      </p>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">Sun from</th>
            <th scope="col">Day’s length</th>
            <th scope="col">Noon height</th>
          </tr>
        </thead>
        <tbody>
          {season.map((sun) => (
            <SunRow key={sun.day} sun={sun} />
          ))}
        </tbody>
      </table>
      <p className={styles.need}>
        Sun’s place: Meeus (1998), Astronomical Algorithms. Weighing by clear-sky light: Meinel and Meinel
        (1976).
      </p>
    </details>
  );
}

function SunRow({ sun }: { sun: SunDay }) {
  return (
    <tr>
      <th scope="row">{shortDayWords(sun.day)}</th>
      <td>
        {sun.meanBearingDeg === null ? (
          'no direct sun'
        ) : (
          <span className={styles.from}>
            <svg width="28" height="28" viewBox="-14 -14 28 28" aria-hidden="true" className={styles.arrow}>
              <circle r="12.5" />
              {/* From the sun's side towards the pot. */}
              <path d="M0 -11V7M-5 2L0 7L5 2" transform={`rotate(${sun.meanBearingDeg})`} />
            </svg>
            {compassWords(sun.meanBearingDeg)}
          </span>
        )}
      </td>
      <td>
        <span className={styles.hours}>{hoursWords(sun.dayLengthHours)}</span>
        <span className={styles.bar} style={{ width: `${(sun.dayLengthHours / 24) * 100}%` }} />
      </td>
      <td>{sun.noonElevationDeg > 0 ? `${sun.noonElevationDeg.toFixed(0)}°` : 'below'}</td>
    </tr>
  );
}
