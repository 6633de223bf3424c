import { useQuery } from '@tanstack/react-query';
import { Link, useSearchParams } from 'wouter';
import { day } from '../../../core/day/day.ts';
import { dayInWords } from '../../../core/day/day-in-words.ts';
import { yearQuery } from '../api/calendar.ts';
import { plantQuery } from '../api/queries.ts';
import { plantSeasonQuery } from '../api/season.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Field } from '../parts/Field.tsx';
import { Icon } from '../parts/Icon.tsx';
import { usePaper } from '../parts/use-paper.ts';
import { usePageWith } from '../plant/use-page-with.ts';
import { kindAndVariety } from '../words/plant-words.ts';
import styles from './YearScreen.module.css';
import { YearSheet } from './YearSheet.tsx';
import { yearChoices } from './year-choices.ts';

/** Season's end: a plant's year on one page, to learn from, to print and to take along as a file. */
export default function YearScreen({ plantId }: { plantId: string }) {
  const [search, setSearch] = useSearchParams();
  const [from, to] = [search.get('from'), search.get('to')];
  const days = from !== null && to !== null ? `?from=${from}&to=${to}` : '';
  const plant = useQuery(plantQuery(plantId));
  const season = useQuery(plantSeasonQuery(plantId));
  const year = useQuery(yearQuery(plantId, days));
  const { page, fault: pictureFault } = usePageWith(plant.data, year.data ? [year.data] : []);
  usePaper('size: portrait; margin: 12mm');
  const fault = year.error ?? plant.error ?? season.error ?? pictureFault;
  const askAgain = () => Promise.all([year.refetch(), plant.refetch(), season.refetch()]);

  if (!year.data || !page || !season.data) {
    if (fault) return <Fault fault={fault} onAgain={askAgain} />;
    return <p className={styles.waiting}>Fetching the year…</p>;
  }
  const choices = yearChoices(page, season.data.entries);
  const address = `/api/plants/${plantId}/year`;
  return (
    <div className={styles.screen}>
      {fault && <Fault fault={fault} onAgain={askAgain} />}
      <header className={styles.head}>
        <div>
          <p className={styles.back}>
            <Link href={`/plants/${plantId}`}>
              <Icon name="back" /> {year.data.name}
            </Link>
          </p>
          <h1>
            {year.data.name}: <span className={styles.plain}>its year</span>
          </h1>
          <p className={styles.facts}>
            {kindAndVariety(year.data)}. {dayInWords(day(year.data.from))} to {dayInWords(day(year.data.to))}.
          </p>
        </div>
        <div className={styles.choice}>
          <Field label="Which year">
            {(wiring) => (
              <select
                {...wiring}
                value={choices.some((one) => one.days === days) ? days : ''}
                onChange={(event) => setSearch(new URLSearchParams(event.target.value), { replace: true })}
              >
                {choices.map((one) => (
                  <option key={one.days} value={one.days}>
                    {one.words}
                  </option>
                ))}
              </select>
            )}
          </Field>
        </div>
        <div className={`${buttons.row} ${styles.acts}`}>
          <button type="button" className={buttons.quiet} onClick={() => window.print()}>
            <Icon name="print" /> Print the year
          </button>
          <a href={`${address}.csv${days}`} download className={buttons.quiet}>
            <Icon name="save" /> Save as a table (CSV)
          </a>
          <a href={`${address}.json${days}`} download className={buttons.quiet}>
            <Icon name="save" /> Save as data (JSON)
          </a>
        </div>
      </header>
      <YearSheet year={year.data} page={page} />
    </div>
  );
}
