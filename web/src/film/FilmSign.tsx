import { MarkSign } from '../calendar/MarkSign.tsx';
import styles from './FilmSign.module.css';
import type { FilmMark } from './film-marks.ts';

/** The sign of a stop, a turn or a bloom, as small as it stands over the bar. */
export function FilmSign({ sign }: Pick<FilmMark, 'sign'>) {
  if (sign !== 'turn') return <MarkSign shape={sign} />;
  return (
    <svg viewBox="0 0 20 20" className={styles.turn} aria-hidden="true">
      <path d="M15.5 12.5A6 6 0 1 1 15 7.2M15.6 3v4.6H11" />
    </svg>
  );
}
