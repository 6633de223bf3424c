import { placeAt } from './azimuth.ts';
import styles from './PlanClock.module.css';

/** Three rays on the side that faces the light. */
export function LightRays({
  azimuthDeg,
  extent,
  unitPx,
}: {
  azimuthDeg: number;
  extent: number;
  unitPx: number;
}) {
  const rays = [-14, 0, 14].map((off) => {
    const from = placeAt(azimuthDeg + off, extent + 52 * unitPx);
    const to = placeAt(azimuthDeg + off, extent + 33 * unitPx);
    const wing = (side: 1 | -1) => {
      const [dx, dy] = placeAt(azimuthDeg + off + side * 35, 7 * unitPx);
      return `${to[0] + dx} ${to[1] + dy}`;
    };
    return `M${from.join(' ')}L${to.join(' ')}M${wing(1)}L${to.join(' ')}L${wing(-1)}`;
  });
  return <path d={rays.join('')} className={styles.rays} data-testid="light-rays" />;
}
