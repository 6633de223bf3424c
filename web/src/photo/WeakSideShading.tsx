import type { Ball } from '../../../core/report.ts';
import { DrawnLabel } from './DrawnLabel.tsx';
import { labelSize } from './label-size.ts';
import styles from './Overlay.module.css';
import type { Box } from './points.ts';
import type { WeakSide } from './weak-side.ts';

const WORDS = 'weak side';

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
  // Just outside the ball, so that the plate hides neither its line nor the hatching.
  const aside = labelSize(WORDS, unitPx).width / 2 + 8 * unitPx;
  const labelX = weak.label[0] + (weak.side === 'left' ? -aside : aside);
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
      <DrawnLabel at={[labelX, weak.label[1]]} words={WORDS} crop={crop} unitPx={unitPx} />
    </>
  );
}
