import styles from './MeasurePicture.module.css';
import { CanopyShape, type MeasureDrawing } from './MeasurePicture.tsx';

/** The ball over the canopy, and its width as an arrow. */
export function SizePicture({ report: { ball }, outlinePx, unitPx }: MeasureDrawing) {
  if (!ball) return null;
  const [x, y] = ball.centrePx;
  const [left, right, head] = [x - ball.radiusPx, x + ball.radiusPx, 7 * unitPx];
  return (
    <>
      <CanopyShape outlinePx={outlinePx} />
      <circle cx={x} cy={y} r={ball.radiusPx} className={styles.line} />
      <path
        d={`M${left} ${y}H${right}M${left + head} ${y - head}L${left} ${y}L${left + head} ${y + head}M${right - head} ${y - head}L${right} ${y}L${right - head} ${y + head}`}
        className={styles.bar}
      />
    </>
  );
}
