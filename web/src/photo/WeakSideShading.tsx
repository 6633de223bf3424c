import type { Ball } from '../../../core/report.ts';
import { DrawnLabel } from './DrawnLabel.tsx';
import type { Plate } from './free-place.ts';
import { clampInto, labelSize } from './label-size.ts';
import styles from './Overlay.module.css';
import type { Box } from './points.ts';
import type { WeakSide } from './weak-side.ts';

const WORDS = 'weak side';

/** The plate that names the weak side: just outside the ball, so that it hides neither its line nor the hatching. */
export function weakPlate({ side, label: [x, y] }: WeakSide, crop: Box, unitPx: number): Plate {
  const size = labelSize(WORDS, unitPx);
  const aside = size.width / 2 + 8 * unitPx;
  return { at: clampInto(crop, [x + (side === 'left' ? -aside : aside), y], size), size };
}

/** Names the weak side, over all lines. */
export function WeakSideName({ weak, crop, unitPx }: { weak: WeakSide; crop: Box; unitPx: number }) {
  return (
    <g className={styles.name}>
      <DrawnLabel at={weakPlate(weak, crop, unitPx).at} words={WORDS} crop={crop} unitPx={unitPx} />
    </g>
  );
}

/** Hatches what the canopy leaves open of the ball on its weak side. */
export function WeakSideShading({
  id,
  weak,
  ball,
  outline,
  unitPx,
}: {
  id: string;
  weak: WeakSide;
  ball: Ball;
  outline: string;
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
        {/* A mask knows no colour, only what is seen (white) and what is not. */}
        <mask id={`${id}-open`}>
          <circle cx={cx} cy={cy} r={ball.radiusPx} fill="white" />
          <path d={outline} fill="black" />
        </mask>
      </defs>
      <rect {...weak.half} fill={`url(#${id}-hatch)`} mask={`url(#${id}-open)`} />
    </>
  );
}
