import styles from './SeasonTrack.module.css';
import type { MarkShape } from './season-marks.ts';

/** Signs on a 20 px grid, wedges for stops: one for a tip stop, two for a deep one. What is long is drawn by its own box. */
const SIGNS: Readonly<Partial<Record<MarkShape, string>>> = {
  'window-tip': 'M6 6h8l-4 8z',
  'window-deep': 'M6 3h8l-4 7zM6 10h8l-4 7z',
  'stop-tip': 'M3.5 4h13L10 16.5z',
  'stop-deep': 'M3.5 1.5h13L10 10.5zM3.5 9.5h13L10 18.5z',
  show: 'M5 1.5v18h2V12h9.5l-3-5 3-5.5z',
  trouble: 'M10 3l7 7-7 7-7-7z',
  'bloom-seen':
    'M10 1.5a3.6 3.6 0 0 1 3.5 4.7 3.6 3.6 0 1 1 0 7.6 3.6 3.6 0 1 1-7 0 3.6 3.6 0 1 1 0-7.6A3.6 3.6 0 0 1 10 1.5z',
  log: 'M10 5.5a4.5 4.5 0 1 0 0 9 4.5 4.5 0 0 0 0-9',
};

export function MarkSign({ shape }: { shape: MarkShape }) {
  const path = SIGNS[shape];
  if (path === undefined) return null;
  return (
    <svg viewBox="0 0 20 20" className={styles.sign} aria-hidden="true">
      <path d={path} />
    </svg>
  );
}
