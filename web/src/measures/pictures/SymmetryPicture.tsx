import { useId } from 'react';
import { boxAround, outlinePath, type Point } from '../../photo/points.ts';
import { Hatching } from './Hatching.tsx';
import styles from './MeasurePicture.module.css';
import type { MeasureDrawing } from './MeasurePicture.tsx';

/** The canopy and its mirror image, above the rim: what both have filled, what one has alone hatched. */
export function SymmetryPicture(drawing: MeasureDrawing) {
  return drawing.report.axis === null ? null : <Mirrored {...drawing} />;
}

function Mirrored({ report: { axis }, outlinePx, unitPx }: MeasureDrawing) {
  const id = useId();
  const box = boxAround(outlinePx);
  if (!axis || !box) return null;
  const rimY = (axis.rimLeftPx[1] + axis.rimRightPx[1]) / 2;
  const canopy = outlinePath(outlinePx);
  const mirrored = outlinePath(outlinePx.map(([x, y]): Point => [2 * axis.xPx - x, y]));
  const wide = {
    x: axis.xPx - box.width * 2,
    y: box.y - 9,
    width: box.width * 4,
    height: Math.max(rimY - box.y + 9, 0),
  };
  return (
    <>
      <defs>
        <Hatching id={`${id}-hatch`} unitPx={unitPx} />
        <clipPath id={`${id}-above`}>
          <rect {...wide} />
        </clipPath>
        <clipPath id={`${id}-canopy`}>
          <path d={canopy} />
        </clipPath>
      </defs>
      <g clipPath={`url(#${id}-above)`}>
        <path d={canopy} fill={`url(#${id}-hatch)`} />
        <path d={mirrored} fill={`url(#${id}-hatch)`} />
        <g clipPath={`url(#${id}-canopy)`}>
          <path d={mirrored} className={styles.shared} />
        </g>
        <path d={mirrored} className={styles.faint} />
        <path d={canopy} className={styles.outline} />
      </g>
      <path d={`M${axis.xPx} ${box.y}V${rimY}`} className={styles.axis} />
    </>
  );
}
