import type { PlanReach } from '../../../core/turned/measure-turned.ts';
import { slicePath } from './azimuth.ts';
import styles from './PlanClock.module.css';
import { BALL, reachAt } from './plan-shape.ts';

/** Half the width of the hatched slice: the weak side is a quarter of the plant. */
const HALF_DEG = 45;

/** Hatches the quarter that should face the light, from inside the reach out to the face. */
export function WeakSlice({
  id,
  azimuthDeg,
  reach,
  extent,
  unitPx,
}: {
  id: string;
  azimuthDeg: number;
  reach: readonly PlanReach[];
  extent: number;
  unitPx: number;
}) {
  const inner = Math.min(0.72 * BALL, 0.72 * (reachAt(reach, azimuthDeg)?.percent ?? BALL));
  const spacing = 9 * unitPx;
  return (
    <g data-testid="weak-slice">
      <defs>
        <pattern
          id={`${id}-weak`}
          width={spacing}
          height={spacing}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width={spacing * 0.3} height={spacing} className={styles.weakLine} />
        </pattern>
      </defs>
      <path
        d={slicePath(azimuthDeg - HALF_DEG, azimuthDeg + HALF_DEG, { inner, outer: extent + 6 * unitPx })}
        fill={`url(#${id}-weak)`}
      />
    </g>
  );
}
