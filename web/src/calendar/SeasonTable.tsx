import { type CSSProperties, type MouseEvent, type ReactNode, useEffect, useMemo, useRef } from 'react';
import type { Day } from '../../../core/day/day.ts';
import type { Show } from '../../../core/season/show.ts';
import styles from './SeasonTable.module.css';
import { SeasonTrack } from './SeasonTrack.tsx';
import { ShowFlags } from './ShowFlags.tsx';
import type { SeasonMark } from './season-marks.ts';
import { WeeksAxis } from './WeeksAxis.tsx';
import { monthsOf, stretchOf, type WeekScale } from './week-scale.ts';

/** One row of the table. */
export interface SeasonRow {
  readonly key: string;
  readonly name: ReactNode;
  readonly marks: readonly SeasonMark[];
}

/** Weeks across, plants down. Names stand still while the weeks move; on paper the top comes again on every page. */
export function SeasonTable({
  caption,
  scale,
  rows,
  shows,
  today,
  onTell,
}: {
  caption: string;
  scale: WeekScale;
  rows: readonly SeasonRow[];
  shows: readonly Show[];
  today: Day;
  /** A mark was touched, and says this. */
  onTell: (words: string) => void;
}) {
  const place = useRef<HTMLElement>(null);
  const now = stretchOf(scale, today, today);
  const nowPercent = now?.leftPercent ?? null;
  // The day begins in sight, with the weeks just past beside it.
  useEffect(() => {
    const scroller = place.current;
    if (!scroller || nowPercent === null) return;
    const room = scroller.scrollWidth - scroller.clientWidth;
    if (room > 0) scroller.scrollLeft = (nowPercent / 100) * scroller.scrollWidth - scroller.clientWidth / 4;
  }, [nowPercent]);
  const grid = useMemo(() => monthLines(scale), [scale]);

  function tell({ target, clientX }: MouseEvent) {
    const row = (target as Element).closest('tr');
    const words = row === null ? [] : wordsNear(row, clientX);
    if (words.length > 0) onTell(words.join(' '));
  }

  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: touch has no titles; every mark is named, and the table of words says the same
    <section
      ref={place}
      className={styles.scroller}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must scroll by keyboard too
      tabIndex={0}
      aria-label={`${caption}; scrolls sideways`}
      onClick={tell}
    >
      <table
        className={styles.table}
        style={{ '--weeks': scale.weeks.length, '--month-lines': grid } as CSSProperties}
      >
        <caption className="only-heard">{caption}</caption>
        <thead>
          <tr>
            <th scope="col" className={styles.name}>
              Plant
            </th>
            <th scope="col" className={styles.weeks}>
              <WeeksAxis scale={scale} today={today} />
            </th>
          </tr>
          {shows.length > 0 && (
            <tr>
              <td className={styles.name}>Shows</td>
              <td className={styles.weeks}>
                <ShowFlags shows={shows} scale={scale} today={today} />
              </td>
            </tr>
          )}
        </thead>
        <tbody>
          {rows.map(({ key, name, marks }) => (
            <tr key={key}>
              <th scope="row" className={styles.name} translate="no">
                {name}
              </th>
              <td className={styles.weeks}>
                {now && (
                  <span
                    className={styles.now}
                    style={{ left: `${now.leftPercent + now.widthPercent / 2}%` }}
                  />
                )}
                <SeasonTrack marks={marks} scale={scale} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Signs are smaller than a finger: all that lie so near to it are told, px. */
const NEAR_PX = 16;

function wordsNear(row: Element, xPx: number): string[] {
  return [...row.querySelectorAll<HTMLElement>('[data-words]')]
    .filter((mark) => {
      const { left, right } = mark.getBoundingClientRect();
      return left - NEAR_PX <= xPx && xPx <= right + NEAR_PX;
    })
    .map((mark) => mark.dataset.words ?? '');
}

/** Upright lines at the beginnings of months, as one background for every row. */
function monthLines(scale: WeekScale): string {
  return monthsOf(scale)
    .slice(1)
    .map(
      ({ leftPercent }) =>
        `linear-gradient(var(--line), var(--line)) ${leftPercent.toFixed(3)}% 0 / 1.5px 100% no-repeat`,
    )
    .join(', ');
}
