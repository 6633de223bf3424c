import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { PlantYear } from '../../../server/schemas/season.ts';
import { todayHere } from '../words/day-words.ts';
import { YearLog } from './YearLog.tsx';
import { YearPictures } from './YearPictures.tsx';
import { YearScores } from './YearScores.tsx';
import styles from './YearScreen.module.css';
import { YearSeason } from './YearSeason.tsx';
import { yearFacts } from './year-words.ts';

/** What happened, what it teaches, and the season itself: drawn, in pictures, in numbers and in words. */
export function YearSheet({ year, page }: { year: PlantYear; page: PlantPage }) {
  return (
    <>
      <div className={styles.outcome}>
        <section aria-labelledby="happened-name">
          <h2 id="happened-name">What happened</h2>
          <dl className={styles.rows}>
            {yearFacts(year, todayHere()).map(([name, words]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{words}</dd>
              </div>
            ))}
          </dl>
        </section>
        <section aria-labelledby="lessons-name" className={styles.lessons}>
          <h2 id="lessons-name">For next time</h2>
          {year.lessons.length === 0 ? (
            <p>Nothing can be learned yet: it takes a show, a stop and the day of full bloom.</p>
          ) : (
            <ul>
              {year.lessons.map((lesson) => (
                <li key={lesson}>{lesson}</li>
              ))}
            </ul>
          )}
        </section>
      </div>
      <YearSeason year={year} />
      <YearPictures sittings={year.sittings} page={page} />
      <YearScores sittings={year.sittings} />
      <YearLog year={year} />
    </>
  );
}
