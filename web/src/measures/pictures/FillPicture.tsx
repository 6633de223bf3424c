import { polygonHull } from 'd3-polygon';
import { useId } from 'react';
import { outlinePath, type Point } from '../../photo/points.ts';
import { Hatching } from './Hatching.tsx';
import styles from './MeasurePicture.module.css';
import type { MeasureDrawing } from './MeasurePicture.tsx';

/** The canopy in the band stretched round it, the bays between them hatched. */
export function FillPicture(drawing: MeasureDrawing) {
  const hull = polygonHull(drawing.outlinePx.map(([x, y]): [number, number] => [x, y]));
  return hull === null ? null : <Wrapped {...drawing} hull={hull} />;
}

function Wrapped({ outlinePx, unitPx, hull }: MeasureDrawing & { hull: readonly Point[] }) {
  const id = useId();
  return (
    <>
      <defs>
        <Hatching id={id} unitPx={unitPx} />
      </defs>
      <path d={outlinePath(hull)} fill={`url(#${id})`} />
      <path d={outlinePath(hull)} className={styles.line} />
      <path d={outlinePath(outlinePx)} className={styles.covering} />
      <path d={outlinePath(outlinePx)} className={styles.outline} />
    </>
  );
}
