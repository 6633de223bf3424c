import { formCircles } from './form-circles.ts';
import styles from './MeasurePicture.module.css';
import type { MeasureDrawing } from './MeasurePicture.tsx';

/** The smoothed outline between the two circles of the minimum zone. */
export function RoundnessPicture({ report: { ball, axis, roundness }, outlinePx }: MeasureDrawing) {
  if (!ball || !roundness) return null;
  const circles = formCircles(outlinePx, ball, axis, roundness.score);
  if (circles === null) return null;
  const [cx, cy] = circles.zone.centre;
  return (
    <>
      <circle cx={cx} cy={cy} r={circles.zone.outerRadius} className={styles.band} />
      <circle cx={cx} cy={cy} r={circles.zone.innerRadius} className={styles.ground} />
      <circle cx={cx} cy={cy} r={circles.zone.outerRadius} className={styles.line} />
      <circle cx={cx} cy={cy} r={circles.zone.innerRadius} className={styles.line} />
      <path
        d={`M${circles.form.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`}
        className={styles.outline}
      />
    </>
  );
}
