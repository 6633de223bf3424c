import type { LopsidednessVector } from '../../../core/turned/lopsidedness-vector.ts';
import { placeAt } from './azimuth.ts';
import styles from './PlanClock.module.css';
import { leanShape } from './plan-shape.ts';

/** The lean from the axis to the heavy side, and the oval in which its true tip lies 19 times out of 20; even plants have the oval alone. */
export function LeanArrow({ lean, unitPx }: { lean: LopsidednessVector; unitPx: number }) {
  const { tip, along, across } = leanShape(lean);
  const [x, y] = tip;
  const oval = (
    <g transform={`translate(${x} ${y}) rotate(${90 - lean.azimuthDeg})`}>
      <ellipse rx={along} ry={across} className={styles.leanOval} />
    </g>
  );
  if (lean.even) return <g data-testid="lean-even">{oval}</g>;
  const length = Math.hypot(x, y);
  const head = Math.min(9 * unitPx, 0.6 * length);
  const wing = (side: 1 | -1) => {
    const [dx, dy] = placeAt(lean.azimuthDeg + 180 + side * 28, head);
    return `${x + dx} ${y + dy}`;
  };
  const line = `M0 0L${x} ${y}M${wing(1)}L${x} ${y}L${wing(-1)}`;
  return (
    <g data-testid="lean-arrow">
      {oval}
      <path d={line} className={styles.leanCasing} />
      <path d={line} className={styles.lean} />
    </g>
  );
}
