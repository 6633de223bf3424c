import { slicePath } from './azimuth.ts';
import styles from './PlanClock.module.css';

/** Half the width of a hatched side: a side is a quarter of the plant. */
const HALF_DEG = 45;

/** Hatches one quarter of a drawing seen from above, between two radii. */
export function HatchedSlice({
  id,
  azimuthDeg,
  inner,
  outer,
  unitPx,
}: {
  id: string;
  azimuthDeg: number;
  inner: number;
  outer: number;
  unitPx: number;
}) {
  const spacing = 9 * unitPx;
  return (
    <g data-testid="hatched-side">
      <defs>
        <pattern
          id={`${id}-hatch`}
          width={spacing}
          height={spacing}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <rect width={spacing * 0.3} height={spacing} className={styles.weakLine} />
        </pattern>
      </defs>
      <path
        d={slicePath(azimuthDeg - HALF_DEG, azimuthDeg + HALF_DEG, { inner, outer })}
        fill={`url(#${id}-hatch)`}
      />
    </g>
  );
}
