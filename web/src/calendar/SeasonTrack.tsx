import { MarkSign } from './MarkSign.tsx';
import styles from './SeasonTrack.module.css';
import type { SeasonMark } from './season-marks.ts';
import { stretchOf, type WeekScale } from './week-scale.ts';

/** One season drawn across the weeks: windows, stops, likely bloom, shows, work and what was noted. */
export function SeasonTrack({ marks, scale }: { marks: readonly SeasonMark[]; scale: WeekScale }) {
  return (
    <div className={styles.track}>
      {marks.map(({ key, shape, from, to, isFaint, words }) => {
        const stretch = stretchOf(scale, from, to);
        if (stretch === null) return null;
        return (
          <span
            key={key}
            className={styles.mark}
            data-shape={shape}
            data-faint={isFaint || undefined}
            data-words={words}
            role="img"
            aria-label={words}
            title={words}
            style={{ left: `${stretch.leftPercent}%`, width: `${stretch.widthPercent}%` }}
          >
            <MarkSign shape={shape} />
          </span>
        );
      })}
    </div>
  );
}
