import styles from './MeasurePicture.module.css';
import { CanopyShape, type MeasureDrawing } from './MeasurePicture.tsx';

/** The axis, the middle of the area, and the distance between them. */
export function LopsidednessPicture({
  report: { ball, axis, lopsidedness },
  outlinePx,
  unitPx,
}: MeasureDrawing) {
  if (!ball || !axis || !lopsidedness) return null;
  const middleX = axis.xPx + (lopsidedness.percent / 100) * ball.radiusPx;
  const y = ball.centrePx[1];
  const top = ball.centrePx[1] - ball.radiusPx;
  const rimY = (axis.rimLeftPx[1] + axis.rimRightPx[1]) / 2;
  return (
    <>
      <CanopyShape outlinePx={outlinePx} />
      <path d={`M${axis.xPx} ${top}V${rimY}`} className={styles.axis} />
      <path d={`M${axis.xPx} ${y}H${middleX}`} className={styles.bar} />
      <circle cx={middleX} cy={y} r={5 * unitPx} className={styles.dot} />
    </>
  );
}
