import { placeAt } from './azimuth.ts';
import styles from './PlanClock.module.css';

/** Hours that have their figure; 6 o'clock has the mark. */
const FIGURES = [
  [180, '12'],
  [90, '3'],
  [270, '9'],
] as const;
const HOURS = Array.from({ length: 12 }, (_, hour) => 30 * hour);

/** The hours round the plan, and the mark on the pot at 6 o'clock. */
export function ClockFace({ extent, unitPx }: { extent: number; unitPx: number }) {
  const inner = extent + 6 * unitPx;
  const [markX, markY] = placeAt(0, inner + 7 * unitPx);
  return (
    <g>
      <circle r={inner} className={styles.face} />
      {HOURS.map((azimuthDeg) => (
        <path
          key={azimuthDeg}
          d={`M${placeAt(azimuthDeg, inner).join(' ')}L${placeAt(azimuthDeg, inner - (azimuthDeg % 90 === 0 ? 9 : 5) * unitPx).join(' ')}`}
          className={styles.hour}
        />
      ))}
      {FIGURES.map(([azimuthDeg, figure]) => {
        const [x, y] = placeAt(azimuthDeg, inner + 14 * unitPx);
        return (
          <text key={figure} x={x} y={y} dy="0.35em" className={styles.figure} fontSize={16 * unitPx}>
            {figure}
          </text>
        );
      })}
      <circle cx={markX} cy={markY} r={6 * unitPx} className={styles.mark} />
      {/* Beside the mark, so that light from that side has room for its rays. */}
      <text x={markX + 12 * unitPx} y={markY} dy="0.35em" className={styles.markWords} fontSize={15 * unitPx}>
        6, the mark
      </text>
      <path d={`M${-5 * unitPx} 0H${5 * unitPx}M0 ${-5 * unitPx}V${5 * unitPx}`} className={styles.axis} />
    </g>
  );
}
