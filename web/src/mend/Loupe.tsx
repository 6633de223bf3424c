import type { ReactNode } from 'react';
import type { Point } from '../photo/points.ts';
import styles from './Loupe.module.css';

/** Across on the screen, CSS px, as in its style. */
const ACROSS = 132;
const CLOSER = 2;

/** Shows what lies under the finger, twice as large as on the stage, in the upper corner away from it. */
export function Loupe({
  at: [x, y],
  isLeft,
  unitPx,
  children,
}: {
  at: Point;
  /** Whether the finger is on the left half of the stage. */
  isLeft: boolean;
  unitPx: number;
  children: ReactNode;
}) {
  const size = (ACROSS / CLOSER) * unitPx;
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
