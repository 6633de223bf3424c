import type { Axis, Ball } from '../../../core/report.ts';
import styles from './Overlay.module.css';
import type { Box } from './points.ts';

/** The ball: a full line where the canopy can be seen, a broken one below the rim, where the pot hides it. */
export function BallLine({ id, ball, axis, crop }: { id: string; ball: Ball; axis: Axis | null; crop: Box }) {
  const [cx, cy] = ball.centrePx;
  const circle = { cx, cy, r: ball.radiusPx };
  const foot = crop.y + crop.height;
  const rimY = axis ? Math.min((axis.rimLeftPx[1] + axis.rimRightPx[1]) / 2, foot) : foot;
  return (
    <>
      <defs>
        <clipPath id={`${id}-seen`}>
          <rect x={crop.x} y={crop.y} width={crop.width} height={Math.max(rimY - crop.y, 0)} />
        </clipPath>
        <clipPath id={`${id}-hidden`}>
          <rect x={crop.x} y={rimY} width={crop.width} height={foot - rimY} />
        </clipPath>
      </defs>
      <g clipPath={`url(#${id}-seen)`}>
        <circle {...circle} className={styles.ballCasing} />
        <circle {...circle} className={styles.ball} />
      </g>
      <g clipPath={`url(#${id}-hidden)`}>
        <circle {...circle} className={`${styles.ball} ${styles.ballHidden}`} />
      </g>
      <circle {...circle} className={styles.reach} />
    </>
  );
}
