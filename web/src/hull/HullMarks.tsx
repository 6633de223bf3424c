import type { HullSolid } from '../../../server/schemas/turned.ts';
import { DrawnLabel } from '../photo/DrawnLabel.tsx';
import type { Point } from '../photo/points.ts';
import { placeAt } from '../plan/azimuth.ts';
import styles from './HullMarks.module.css';
import type { SolidScene } from './solid-scene.ts';
import { type Direction, eyeAxes, seen, type Turning } from './turning.ts';

export interface HullMarksProps {
  readonly solid: HullSolid;
  readonly scene: SolidScene;
  readonly turning: Turning;
  /** In the solid's unit; `null` when none was fitted. */
  readonly ball: { readonly centre: Direction; readonly radius: number } | null;
  readonly lightAzimuthDeg: number | null;
  /** Side of the stage, CSS px. */
  readonly width: number;
}

/** What is named on the solid: its ball, the weak and the heavy side, the mark and the light. */
export function HullMarks({ solid, scene, turning, ball, lightAzimuthDeg, width }: HullMarksProps) {
  const axes = eyeAxes(turning);
  const { reach, middle, tableRadius, footH } = scene;
  const unitPx = (2 * reach) / width;
  const look = (u: number, v: number, h: number) => seen([u - middle[0], v - middle[1], h - middle[2]], axes);
  const atSide = (azimuthDeg: number, radius: number, h: number) => {
    const [v, u] = placeAt(azimuthDeg, radius);
    return look(u, v, h);
  };
  const crop = { x: -reach, y: -reach, width: 2 * reach, height: 2 * reach };
  const label = (words: string, at: Point) => (
    <DrawnLabel key={words} at={at} words={words} crop={crop} unitPx={unitPx} />
  );
  const sides = [
    ['weak side', solid.weakAzimuthDeg],
    ['heavy side', solid.heavyAzimuthDeg],
  ] as const;
  const ballAt = ball && look(...ball.centre);
  return (
    <svg
      className={styles.drawing}
      viewBox={`${-reach} ${-reach} ${2 * reach} ${2 * reach}`}
      aria-hidden="true"
    >
      {ball && ballAt && <circle cx={ballAt[0]} cy={ballAt[1]} r={ball.radius} className={styles.ball} />}
      {sides.map(([words, azimuthDeg]) => {
        if (azimuthDeg === null) return null;
        const [x, y, depth] = atSide(azimuthDeg, 0.78 * tableRadius, 0.5 * (middle[2] + tableRadius));
        return label(depth < 0 ? `${words}, behind` : words, [x, y]);
      })}
      {label('mark', below(atSide(0, tableRadius, footH), 23 * unitPx))}
      {lightAzimuthDeg !== null &&
        label('light', below(atSide(lightAzimuthDeg, 1.1 * tableRadius, footH), 26 * unitPx))}
    </svg>
  );
}

function below([x, y]: readonly [number, number, number], by: number): Point {
  return [x, y + by];
}
