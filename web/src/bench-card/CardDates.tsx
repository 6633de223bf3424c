import { type Day, day } from '../../../core/day/day.ts';
import type { PlantSeasonAnswer } from '../../../server/schemas/season.ts';
import { workShelves } from '../season/work/work-shelves.ts';
import { dayWords } from '../words/day-words.ts';
import styles from './BenchCard.module.css';

/** As many dates as fit beside the rest on one page. */
const MOST_DATES = 8;

/** What comes next for this plant, the nearest first: work that is due or to come, the windows of the stops, the shows. */
export function CardDates({ season, today }: { season: PlantSeasonAnswer; today: Day }) {
  const { now, soon, later } = workShelves(season.work, today);
  const isNotDue = ({ kind, what }: (typeof now)[number]) =>
    !now.some((due) => due.kind === kind && due.what === what);
  const shows = season.entries
    .map(({ show }) => show)
    .filter((show) => show.day >= today)
    .map(({ day: on, name }) => ({
      key: `show ${on} ${name}`,
      on: day(on),
      to: null,
      words: `Show: ${name}`,
    }));
  const dates = [
    // What is due now and comes round again stands once.
    ...[...now, ...[...soon, ...later].filter(isNotDue)].map(({ key, day: on, dueBy, what }) => ({
      key,
      on: day(on),
      to: dueBy > on ? dueBy : null,
      words: what,
    })),
    ...shows,
  ].sort((one, other) => (one.on < other.on ? -1 : one.on > other.on ? 1 : 0));
  const kept = dates.slice(0, MOST_DATES);
  // The show stands on the card however far ahead it is.
  const last = shows.filter((show) => !kept.some(({ key }) => key === show.key)).slice(0, 1);
  return (
    <section aria-labelledby="card-dates" className={styles.dates}>
      <h3 id="card-dates">Next dates</h3>
      {dates.length === 0 ? (
        <p>No date is set.</p>
      ) : (
        <ol>
          {[...kept, ...last].map(({ key, on, to, words }) => (
            <li key={key}>
              <span className={styles.box} />
              <b>
                {on < today ? 'now' : dayWords(on, today)}
                {to && ` to ${dayWords(to, today)}`}
              </b>
              <span>{words}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
