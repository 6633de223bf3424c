import { SHAPE_WORDS } from './calendar-words.ts';
import styles from './MarkLegend.module.css';
import { MarkSign } from './MarkSign.tsx';
import track from './SeasonTrack.module.css';
import type { MarkShape } from './season-marks.ts';

/** What each sign means. */
export function MarkLegend() {
  return (
    <ul className={styles.legend} aria-label="Signs">
      {(Object.entries(SHAPE_WORDS) as [MarkShape, string][]).map(([shape, words]) => (
        <li key={shape}>
          <span className={styles.box} aria-hidden="true">
            <span className={track.mark} data-shape={shape}>
              <MarkSign shape={shape} />
            </span>
          </span>
          {words}
        </li>
      ))}
    </ul>
  );
}
