import type { Ball } from '../../../core/report.ts';
import { DrawnLabel } from './DrawnLabel.tsx';
import styles from './Overlay.module.css';
import type { Box } from './points.ts';
import type { WeakSide } from './weak-side.ts';

/** Hatches what the canopy leaves open of the ball on its weak side, and says so in words. */
export function WeakSideShading({
  id,
  weak,
  ball,
  outline,
  crop,
  unitPx,
}: {
  id: string;
  weak: WeakSide;
  ball: Ball;
  outline: string;
  crop: Box;
  unitPx: number;
}) {
  const spacing = 9 * unitPx;
  const [cx, cy] = ball.centrePx;
  return (
    <>
      <defs>
        <pattern
          id={`${id}-hatch`}
          width={spacing}
          height={spacing}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width={spacing} height={spacing} className={styles.hatchGround} />
          <rect width={spacing * 0.32} height={spacing} className={styles.hatchLine} />
        </pattern>
        <mask id={`${id}-open`}>
          <circle cx={cx} cy={cy} r={ball.radiusPx} fill="#fff" />
          <path d={outline} fill="#000" />
        </mask>
      </defs>
      <rect {...weak.half} fill={`url(#${id}-hatch)`} mask={`url(#${id}-open)`} />
      <DrawnLabel at={weak.label} words="weak side" tone="plain" crop={crop} unitPx={unitPx} />
    </>
  );
}
