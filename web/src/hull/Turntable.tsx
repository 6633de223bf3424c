import { placeAt } from '../plan/azimuth.ts';
import styles from './HullMarks.module.css';
import type { HullMarksProps } from './HullMarks.tsx';
import { type Direction, eyeAxes, seen } from './turning.ts';

const HOURS = Array.from({ length: 12 }, (_, hour) => 30 * hour);

/** The turntable under the pot, with its hours, the mark and the light; it lies behind the solid. */
export function Turntable({ scene, turning, lightAzimuthDeg, width }: HullMarksProps) {
  const axes = eyeAxes(turning);
  const { reach, tableRadius, footH, middle } = scene;
  const unitPx = (2 * reach) / width;
  const at = (azimuthDeg: number, radius: number): string => {
    // placeAt gives the plan's right and foot, which are the plant's v and u.
    const [v, u] = placeAt(azimuthDeg, radius);
    const point: Direction = [u - middle[0], v - middle[1], footH - middle[2]];
    const [x, y] = seen(point, axes);
    return `${x.toFixed(2)} ${y.toFixed(2)}`;
  };
  const ring = (radius: number) => `M${Array.from({ length: 72 }, (_, k) => at(5 * k, radius)).join('L')}Z`;
  const [markX, markY] = at(0, tableRadius).split(' ');
  return (
    <svg
      className={styles.drawing}
      viewBox={`${-reach} ${-reach} ${2 * reach} ${2 * reach}`}
      aria-hidden="true"
    >
      <path d={ring(tableRadius)} className={styles.table} />
      {HOURS.map((azimuthDeg) => (
        <path
          key={azimuthDeg}
          d={`M${at(azimuthDeg, tableRadius)}L${at(azimuthDeg, (azimuthDeg % 90 === 0 ? 0.9 : 0.95) * tableRadius)}`}
          className={styles.hour}
        />
      ))}
      <circle cx={markX} cy={markY} r={6 * unitPx} className={styles.mark} />
      {lightAzimuthDeg !== null &&
        [-9, 0, 9].map((off) => (
          <path
            key={off}
            d={`M${at(lightAzimuthDeg + off, 1.18 * tableRadius)}L${at(lightAzimuthDeg + off, 1.03 * tableRadius)}M${at(lightAzimuthDeg + off - 3, 1.08 * tableRadius)}L${at(lightAzimuthDeg + off, 1.03 * tableRadius)}L${at(lightAzimuthDeg + off + 3, 1.08 * tableRadius)}`}
            className={styles.rays}
          />
        ))}
    </svg>
  );
}
