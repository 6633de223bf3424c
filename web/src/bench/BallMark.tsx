import type { BenchView } from '../../../server/schemas/pages.ts';
import styles from '../photo/Overlay.module.css';

/** The ball alone, drawn fine: enough to see from afar how round the plant stands. */
export function BallMark({ view }: { view: BenchView }) {
  const ball = view.report?.ball;
  if (!ball) return null;
  const [cx, cy] = ball.centrePx;
  return (
    <g>
      <circle cx={cx} cy={cy} r={ball.radiusPx} className={styles.outlineCasing} />
      <circle
        cx={cx}
        cy={cy}
        r={ball.radiusPx}
        className={styles.outline}
        style={{ stroke: 'var(--draw-ball)' }}
      />
    </g>
  );
}
