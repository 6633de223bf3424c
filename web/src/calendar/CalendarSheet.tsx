import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import { day } from '../../../core/day/day.ts';
import type { Calendar } from '../../../server/schemas/season.ts';
import { Field } from '../parts/Field.tsx';
import { dayWords } from '../words/day-words.ts';
import { countWords, KIND_WORDS } from '../words/plant-words.ts';
import styles from './CalendarScreen.module.css';
import { MarkLegend } from './MarkLegend.tsx';
import { MarkTable } from './MarkTable.tsx';
import { SeasonTable } from './SeasonTable.tsx';
import { seasonMarks } from './season-marks.ts';
import { weekScale } from './week-scale.ts';

type CalendarPlant = Calendar['plants'][number];

/** So many plants are seen at a glance and need no choice. */
const AT_A_GLANCE = 8;

/** The page itself: every plant's season across the weeks, and the same in words. */
export function CalendarSheet({ calendar }: { calendar: Calendar }) {
  const [showId, chooseShow] = useState('');
  const [told, tell] = useState<string | null>(null);
  const today = day(calendar.today);
  const scale = useMemo(() => weekScale(day(calendar.from), day(calendar.to)), [calendar.from, calendar.to]);
  const rows = useMemo(
    () =>
      calendar.plants
        .filter(({ showIds }) => showId === '' || showIds.includes(showId))
        .map((plant) => ({
          key: plant.plantId,
          name: <PlantName plant={plant} />,
          plainName: plant.name,
          marks: seasonMarks(
            { ...plant, shows: calendar.shows.filter(({ id }) => plant.showIds.includes(id)) },
            today,
          ),
        })),
    [calendar, showId, today],
  );
  const words = `${dayWords(scale.firstDay, today)} to ${dayWords(scale.lastDay, today)}`;
  return (
    <>
      <p className={styles.span}>
        {words}. {countWords(rows.length, 'plant')}, as of {dayWords(today, today)}.
      </p>
      {calendar.plants.length > AT_A_GLANCE && calendar.shows.length > 0 && (
        <div className={styles.choice}>
          <Field label="Plants">
            {(wiring) => (
              <select {...wiring} value={showId} onChange={(event) => chooseShow(event.target.value)}>
                <option value="">All on the bench</option>
                {calendar.shows.map(({ id, name }) => (
                  <option key={id} value={id}>
                    Entered for {name}
                  </option>
                ))}
              </select>
            )}
          </Field>
        </div>
      )}
      <SeasonTable
        caption={`The season of all plants, ${words}`}
        scale={scale}
        rows={rows}
        shows={calendar.shows}
        today={today}
        onTell={tell}
      />
      <p role="status" className={styles.told} data-told={told === null ? undefined : ''}>
        {told ?? 'Touch a sign to read what it says.'}
      </p>
      <MarkLegend />
      <MarkTable
        rows={rows.map(({ key, plainName, marks }) => ({ key, name: plainName, marks }))}
        scale={scale}
        today={today}
      />
    </>
  );
}

function PlantName({ plant: { plantId, name, kind } }: { plant: CalendarPlant }) {
  return (
    <Link href={`/plants/${plantId}`} className={styles.plant}>
      <span translate="no">{name}</span>
      <small>{KIND_WORDS[kind]}</small>
    </Link>
  );
}
