import type { Point } from '../photo/points.ts';
import styles from './MendPicture.module.css';

/** The brush's edge at a place in the photo. */
export function BrushRing({ at: [cx, cy], widthPx }: { at: Point; widthPx: number }) {
  return (
    <g pointerEvents="none">
      <circle cx={cx} cy={cy} r={widthPx / 2} className={styles.ringCasing} />
      <circle cx={cx} cy={cy} r={widthPx / 2} className={styles.ring} />
    </g>
  );
}

/** The place of the keys: a cross with an open middle, so that the spot itself stays in sight. */
export function Crosshair({ at: [x, y], unitPx }: { at: Point; unitPx: number }) {
  const [near, far] = [4 * unitPx, 18 * unitPx];
  const d = [
    `M${x - far} ${y}H${x - near}M${x + near} ${y}H${x + far}`,
    `M${x} ${y - far}V${y - near}M${x} ${y + near}V${y + far}`,
  ].join('');
  return (
    <g pointerEvents="none" data-testid="crosshair">
      <path d={d} className={styles.crossCasing} />
      <path d={d} className={styles.cross} />
    </g>
  );
}
