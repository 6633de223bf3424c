import { type Day, day, daysBetween } from '../../../../core/day/day.ts';
import type { PlantSeasonAnswer } from '../../../../server/schemas/season.ts';
import { dayWords } from '../../words/day-words.ts';
import { countWords } from '../../words/plant-words.ts';
import styles from './FigureMakeup.module.css';

type Recorded = PlantSeasonAnswer['records'][number];

/** Seasons on record: from which stop to full bloom, and why one does not count. */
export function RecordList({
  name,
  records,
  plantId,
  today,
  none,
}: {
  name: string;
  records: readonly Recorded[];
  plantId: string;
  today: Day;
  /** What stands there while there is none; `null`: nothing at all. */
  none: string | null;
}) {
  if (records.length === 0 && none === null) return null;
  return (
    <div>
      <h3 className={styles.name}>{name}</h3>
      {records.length === 0 && <p className={styles.sub}>{none}</p>}
      <ul className={styles.records}>
        {records.map((record) => (
          <li key={`${record.plantId}${record.stopDay}`}>
            {record.plantId === plantId ? 'This plant' : record.variety || 'Another plant of the kind'}:{' '}
            {recordWords(record, today)}
            {record.seasonNotes.length > 0 && (
              <span className={styles.sub}> Noted: {record.seasonNotes.join(' ')}</span>
            )}
            {record.leftOut !== null && <span className={styles.sub}> {record.leftOut}</span>}
          </li>
        ))}
      </ul>
    </div>
  );
}

function recordWords({ depth, stopDay, firstFlowerDay, fullBloomDay }: Recorded, today: Day): string {
  const stop = `${depth} stop ${dayWords(stopDay, today)}`;
  const flower = firstFlowerDay === null ? '' : `, first flower ${dayWords(firstFlowerDay, today)}`;
  if (fullBloomDay === null) return `${stop}${flower}.`;
  const days = countWords(daysBetween(day(stopDay), day(fullBloomDay)), 'day');
  return `${stop}${flower}, full bloom ${dayWords(fullBloomDay, today)}: ${days}.`;
}
