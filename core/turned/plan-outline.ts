import { radOf } from './circular-statistics.ts';
import type { SupportLine } from './support-line.ts';

/** A point of the plan: `u` towards azimuth 0, `v` towards azimuth 90. */
export type PlanPoint = readonly [u: number, v: number];

/**
 * The plan's outer bound: what lies inside all support lines.
 *
 * @param lines at least three that close round the plant, plan's unit
 * @returns corners, anticlockwise seen from above; `null` when the lines do not close or contradict each other
 *
 * Notes: the canopy lies inside and touches every side; what it does in the corners no silhouette shows.
 *
 * Reference: Sutherland and Hodgman (1974), Reentrant polygon clipping.
 *
 * Example: four lines of distance 1 at 0, 90, 180, 270 give the square (±1, ±1).
 */
export function planOutline(lines: readonly SupportLine[]): PlanPoint[] | null {
  const farthest = Math.max(...lines.map(({ distance }) => Math.abs(distance)));
  const bound = 50 * farthest;
  let corners: PlanPoint[] = [
    [bound, bound],
    [-bound, bound],
    [-bound, -bound],
    [bound, -bound],
  ];
  for (const { azimuthDeg, distance } of lines) {
    const [cos, sin] = [Math.cos(radOf(azimuthDeg)), Math.sin(radOf(azimuthDeg))];
    const beyond = ([u, v]: PlanPoint) => u * cos + v * sin - distance;
    corners = corners.flatMap((corner, k): PlanPoint[] => {
      const next = corners[(k + 1) % corners.length] as PlanPoint;
      const [here, there] = [beyond(corner), beyond(next)];
      const kept: PlanPoint[] = here <= 0 ? [corner] : [];
      if (here <= 0 === there <= 0) return kept;
      const share = here / (here - there);
      return [
        ...kept,
        [corner[0] + share * (next[0] - corner[0]), corner[1] + share * (next[1] - corner[1])],
      ];
    });
  }
  const closed =
    corners.length > 2 && corners.every(([u, v]) => Math.max(Math.abs(u), Math.abs(v)) < bound / 2);
  return closed ? corners : null;
}
