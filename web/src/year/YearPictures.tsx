import { day } from '../../../core/day/day.ts';
import { calendarWeek } from '../../../core/season/calendar-week.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { PlantYear } from '../../../server/schemas/season.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { plantCrop } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import { shortDayWords } from '../words/day-words.ts';
import styles from './YearPictures.module.css';
import { scoreWords } from './year-words.ts';

/** Width of a picture on paper: 34 mm at the 96 px an inch of CSS. */
const PRINTED_PX = 128;

/** One picture a sitting, week by week, each with its roundness. */
export function YearPictures({ sittings, page }: { sittings: PlantYear['sittings']; page: PlantPage }) {
  const views = new Map(page.sittings.map((sitting) => [sitting.id, shownView(sitting.views)]));
  return (
    <section aria-labelledby="pictures-name" className={styles.section}>
      <h2 id="pictures-name">Week by week</h2>
      {sittings.length === 0 && <p>No photo was taken in this time.</p>}
      <ol className={styles.pictures}>
        {sittings.map((sitting) => {
          const view = views.get(sitting.sittingId);
          return (
            <li key={sitting.sittingId}>
              {view ? (
                <Photo
                  view={view}
                  crop={plantCrop(view, 1)}
                  label={`${page.plant.name} on ${shortDayWords(sitting.day)}`}
                  detail={320}
                  printedPx={PRINTED_PX}
                />
              ) : (
                <span className={styles.none}>No picture</span>
              )}
              <p>
                <b>{shortDayWords(sitting.day)}</b>, week {calendarWeek(day(sitting.day)).week}
              </p>
              <p className={styles.score}>
                {sitting.roundness === null
                  ? 'not measured'
                  : `Roundness ${scoreWords(sitting, 'roundness')}`}
                {sitting.setAside !== null && ', left out'}
              </p>
            </li>
          );
        })}
      </ol>
    </section>
  );
}

/** The first measured one, as the scores are. */
function shownView(views: readonly View[]): View | undefined {
  return views.find(({ report }) => report?.status === 'measured') ?? views[0];
}
