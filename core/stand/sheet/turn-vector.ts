import type { Point3 } from './sheet-reading.ts';
import { cross, dot, length, plus, times } from './vector3.ts';

/** Right and down axis of the paper for a turn vector (Rodrigues). */
export function axesOfTurn(values: readonly number[]): [Point3, Point3] {
  const vector: Point3 = [values[0] as number, values[1] as number, values[2] as number];
  const turn = length(vector);
  const axis: Point3 = turn > 1e-12 ? times(vector, 1 / turn) : [0, 0, 1];
  const turned = (v: Point3): Point3 =>
    plus(
      plus(times(v, Math.cos(turn)), times(cross(axis, v), Math.sin(turn))),
      times(axis, (1 - Math.cos(turn)) * dot(axis, v)),
    );
  return [turned([1, 0, 0]), turned([0, 1, 0])];
}

/** Turn vector of the paper's axes; near half a turn the axis is read off the matrix' diagonal. */
export function turnOfAxes(r1: Point3, r2: Point3): Point3 {
  const r3 = cross(r1, r2);
  const trace = r1[0] + r2[1] + r3[2];
  // Quaternion by its largest part (Shepperd 1978).
  const parts = [trace, r1[0], r2[1], r3[2]];
  const most = parts.indexOf(Math.max(...parts));
  const quaternion: number[] =
    most === 0
      ? [1 + trace, r2[2] - r3[1], r3[0] - r1[2], r1[1] - r2[0]]
      : most === 1
        ? [r2[2] - r3[1], 1 + r1[0] - r2[1] - r3[2], r2[0] + r1[1], r3[0] + r1[2]]
        : most === 2
          ? [r3[0] - r1[2], r2[0] + r1[1], 1 - r1[0] + r2[1] - r3[2], r3[1] + r2[2]]
          : [r1[1] - r2[0], r3[0] + r1[2], r3[1] + r2[2], 1 - r1[0] - r2[1] + r3[2]];
  const [w = 1, x = 0, y = 0, z = 0] = quaternion;
  const sine = Math.hypot(x, y, z);
  const turn = 2 * Math.atan2(sine, w);
  return sine > 1e-12 ? times([x, y, z], turn / sine) : [0, 0, 0];
}
