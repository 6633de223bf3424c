import type { CSSProperties } from 'react';
import type { Day } from '../../../core/day/day.ts';
import type { Show } from '../../../core/season/show.ts';
import { dayWords } from '../words/day-words.ts';
import styles from './ShowFlags.module.css';
import { laneOf, stretchOf, type WeekScale } from './week-scale.ts';

/** A label is as long as so many weeks on the narrowest page. */
const LABEL_WEEKS = 13;

/** The shows on their days, by name, on as many lines as they need. */
export function ShowFlags({ shows, scale, today }: { shows: readonly Show[]; scale: WeekScale; today: Day }) {
  const lengthPercent = (100 * LABEL_WEEKS) / scale.weeks.length;
  const placed = shows
    .flatMap((show) => {
      const stretch = stretchOf(scale, show.day, show.day);
      if (stretch === null) return [];
      const left = stretch.leftPercent + stretch.widthPercent / 2;
      // Near the right edge a label stands before its day.
      const isBefore = left + lengthPercent > 100;
      return { show, left, isBefore, start: isBefore ? left - lengthPercent : left };
    })
    .sort((one, other) => one.start - other.start);
  const lanes = laneOf(
    placed.map(({ start }) => start),
    lengthPercent,
  );
  return (
    <div className={styles.flags} style={{ '--lanes': Math.max(...lanes, 0) + 1 } as CSSProperties}>
      {placed.map(({ show, left, isBefore }, index) => (
        <span
          key={show.id}
          className={styles.flag}
          data-words={`${show.name}, ${dayWords(show.day, today)}`}
          title={`${show.name}, ${dayWords(show.day, today)}`}
          data-before={isBefore || undefined}
          style={{ left: `${left}%`, '--lane': lanes[index] } as CSSProperties}
        >
          <span translate="no">{show.name}</span>
        </span>
      ))}
    </div>
  );
}
