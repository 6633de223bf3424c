import { radOf } from '../../../core/turned/circular-statistics.ts';
import styles from './RimInPicture.module.css';
import { markFromCameraDeg } from './taking-words.ts';

/** The pot as the picture should show it: where on the rim the mark is. */
export function RimInPicture({ turnDeg }: { turnDeg: number }) {
  const direction = radOf(markFromCameraDeg(turnDeg));
  const [x, near] = [56 * Math.sin(direction), Math.cos(direction)];
  const behind = near < -0.05;
  return (
    <svg viewBox="-80 -66 160 120" className={styles.drawing} aria-hidden="true">
      <path d="M-56 0L-42 46H42L56 0" className={styles.pot} />
      <ellipse rx="56" ry="11" className={styles.pot} />
      {behind && <circle cx={x} cy={11 * near} r="7" className={styles.hidden} />}
      <path d="M-60 -6C-72 -70 72 -70 60 -6C30 -2 -30 -2 -60 -6Z" className={styles.plant} />
      {!behind && <circle cx={x} cy={11 * near} r="7.5" className={styles.mark} />}
    </svg>
  );
}
