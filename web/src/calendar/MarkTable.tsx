import { useState } from 'react';
import type { Day } from '../../../core/day/day.ts';
import twin from '../parts/twin.module.css';
import { dayWords } from '../words/day-words.ts';
import styles from './CalendarScreen.module.css';
import type { SeasonMark } from './season-marks.ts';
import { stretchOf, type WeekScale } from './week-scale.ts';

/** What the signs of the page say, as a table in order of day. Made when it is opened: with many plants it is long. */
export function MarkTable({
  rows,
  scale,
  today,
}: {
  rows: readonly { readonly key: string; readonly name: string; readonly marks: readonly SeasonMark[] }[];
  scale: WeekScale;
  today: Day;
}) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details
      className={`${twin.twin} ${styles.words}`}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>The same in words</summary>
      {isOpen && (
        <table>
          <thead>
            <tr>
              <th scope="col">Plant</th>
              <th scope="col">From</th>
              <th scope="col">What</th>
            </tr>
          </thead>
          {rows.map(({ key, name, marks }) => {
            const inSight = marks
              .filter(({ from, to }) => stretchOf(scale, from, to) !== null)
              .sort((one, other) => (one.from < other.from ? -1 : 1));
            return (
              <tbody key={key}>
                {inSight.length === 0 && (
                  <tr>
                    <th scope="row" translate="no">
                      {name}
                    </th>
                    <td />
                    <td>Nothing in these weeks.</td>
                  </tr>
                )}
                {inSight.map((mark, index) => (
                  <tr key={mark.key}>
                    {index === 0 && (
                      <th scope="rowgroup" rowSpan={inSight.length} translate="no">
                        {name}
                      </th>
                    )}
                    <td>{dayWords(mark.from, today)}</td>
                    <td>{mark.words}</td>
                  </tr>
                ))}
              </tbody>
            );
          })}
        </table>
      )}
    </details>
  );
}
