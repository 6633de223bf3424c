import { placeAt } from '../plan/azimuth.ts';
import styles from './CutRow.module.css';

/** The ball with what stands outside it at its hour, and the cut's number within; seen from above the mark stands at 6. */
export function HourDial({ hour, number, turned }: { hour: number | null; number: number; turned: boolean }) {
  // The drawing has 6 at its foot and runs anticlockwise from there.
  const azimuthDeg = hour === null ? null : (6 - hour) * 30;
  return (
    <svg width="64" height="64" viewBox="-32 -32 64 64" aria-hidden="true" className={styles.dial}>
      <circle r="19" className={styles.ring} />
      {azimuthDeg !== null && (
        <path
          d={`M${placeAt(azimuthDeg, 18).join(' ')}L${placeAt(azimuthDeg, 29).join(' ')}`}
          className={styles.spike}
        />
      )}
      {turned && <circle cy="27" r="3" className={styles.mark} />}
      <text dy="0.36em" className={styles.number}>
        {number}
      </text>
    </svg>
  );
}
