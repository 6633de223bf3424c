import type { ReactNode } from 'react';
import type { Box, Point } from '../photo/points.ts';
import styles from './Loupe.module.css';

/** Shows what lies under the finger, in the upper corner away from it, half as large again as on the stage. */
export function Loupe({ at, window, children }: { at: Point; window: Box; children: ReactNode }) {
  const [x, y] = at;
  const isLeft = x < window.x + window.width / 2;
  // The loupe is 132 px across on the screen: as wide a piece of the photo as it magnifies.
  const size = window.width * SHARE;
  return (
    <svg
      className={styles.loupe}
      data-side={isLeft ? 'right' : 'left'}
      viewBox={`${x - size / 2} ${y - size / 2} ${size} ${size}`}
      aria-hidden="true"
    >
      {children}
    </svg>
  );
}

/** The piece of the window's width that the loupe shows: with 132 px of about 390, 1.5 times closer. */
const SHARE = 132 / 390 / 1.5;
