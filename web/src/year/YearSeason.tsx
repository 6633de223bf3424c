import { useMemo, useState } from 'react';
import { day } from '../../../core/day/day.ts';
import type { PlantYear } from '../../../server/schemas/season.ts';
import { MarkLegend } from '../calendar/MarkLegend.tsx';
import { SeasonTable } from '../calendar/SeasonTable.tsx';
import { seasonMarks } from '../calendar/season-marks.ts';
import { weekScale } from '../calendar/week-scale.ts';
import { todayHere } from '../words/day-words.ts';
import styles from './YearScreen.module.css';

/** The year as one row of the calendar. */
export function YearSeason({ year }: { year: PlantYear }) {
  const [told, tell] = useState<string | null>(null);
  const today = todayHere();
  const { name, show, plan, stops, log, plantId } = year;
  const scale = useMemo(() => weekScale(day(year.from), day(year.to)), [year.from, year.to]);
  const marks = seasonMarks(
    {
      steps: plan?.steps ?? [],
      bloom90: plan?.effect?.bloom90 ?? null,
      bloomLastsDays: plan?.bloomLastsDays ?? null,
      stops: stops.map((stop) => ({ ...stop, id: `stop ${stop.day}`, plantId, note: '' })),
      notes: log,
      work: [],
      shows: show === null ? [] : [show],
      aimShowId: show?.id ?? null,
    },
    today,
  );
  return (
    <section aria-labelledby="season-drawn-name" className={styles.part}>
      <h2 id="season-drawn-name">The season</h2>
      <SeasonTable
        caption={`The year of ${name}`}
        scale={scale}
        rows={[{ key: plantId, name, marks }]}
        shows={show === null ? [] : [show]}
        today={today}
        onTell={tell}
      />
      <p role="status" className={styles.told}>
        {told ?? 'Touch a sign to read what it says; stops and notes stand in words below.'}
      </p>
      <MarkLegend />
    </section>
  );
}
