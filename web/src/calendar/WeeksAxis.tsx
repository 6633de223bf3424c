import { type Day, day } from '../../../core/day/day.ts';
import { monthWords, weeksInWords } from './calendar-words.ts';
import styles from './WeeksAxis.module.css';
import { monthsOf, type WeekScale } from './week-scale.ts';

/** A month that is only begun has no room for its name, percent of the page. */
const LEAST_LABELLED = 3.5;

/** Months and week numbers across the top. */
export function WeeksAxis({ scale, today }: { scale: WeekScale; today: Day }) {
  return (
    <div className={styles.axis}>
      <span className="only-heard">{weeksInWords(scale)}</span>
      <div className={styles.months} aria-hidden="true">
        {monthsOf(scale).map(({ firstDay, leftPercent, widthPercent }) => (
          <span key={firstDay} style={{ left: `${leftPercent}%`, width: `${widthPercent}%` }}>
            {widthPercent > LEAST_LABELLED &&
              monthWords(firstDay, firstDay.endsWith('-01-01') || firstDay <= scale.firstDay)}
          </span>
        ))}
      </div>
      <div className={styles.weeks} aria-hidden="true">
        {scale.weeks.map(({ year, week, monday }, index) => (
          <span
            key={`${year} ${week}`}
            data-now={isWeekOf(day(monday), scale.weeks[index + 1]?.monday, today) || undefined}
          >
            {week}
          </span>
        ))}
      </div>
    </div>
  );
}

function isWeekOf(monday: Day, next: Day | undefined, today: Day): boolean {
  return monday <= today && (next === undefined || today < next);
}
