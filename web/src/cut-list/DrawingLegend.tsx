import type { ReactNode } from 'react';
import type { CutList } from '../../../server/schemas/cuts.ts';
import overlay from '../photo/Overlay.module.css';
import styles from './CutDrawings.module.css';

/** What each line on the photo is, with a sample of how it looks. */
export function DrawingLegend({ list }: { list: CutList }) {
  const after = list.outlinesAfter.some(({ outlinePx }) => outlinePx.length > 0);
  const entries: readonly (readonly [boolean, ReactNode, string])[] = [
    [list.cuts.length > 0, <path key="" d="M13 2L19 14" className={overlay.bar} />, 'Cut here'],
    [true, <path key="" d="M3 15a10 10 0 0 1 26 0" className={overlay.ball} />, 'Ball to cut to'],
    [true, <path key="" d={WAVE} className={styles.after} />, after ? 'Outline after' : 'Outline'],
    [after, <path key="" d={WAVE} className={styles.now} />, 'Outline now'],
  ];
  return (
    <ul className={styles.legend}>
      {entries.map(
        ([shown, sample, words]) =>
          shown && (
            <li key={words}>
              <svg width="32" height="16" viewBox="0 0 32 16" aria-hidden="true">
                <rect width="32" height="16" rx="4" fill="var(--draw-leaf)" />
                {sample}
              </svg>
              {words}
            </li>
          ),
      )}
    </ul>
  );
}

const WAVE = 'M3 11c4-8 6 2 10-4s6 4 9-1 4 2 7 2';
