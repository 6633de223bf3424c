import type { HullGrid } from './hull-grid.ts';

/** A closed surface of triangles, plan's unit. */
export interface Surface {
  /** u, v, h of each corner, one after another. */
  readonly corners: Float32Array;
  /** Three corner numbers a triangle, anticlockwise seen from outside. */
  readonly triangles: Uint32Array;
}

/**
 * The hull's surface as triangles, for its area and for the screen.
 *
 * @param grid depths, positive inside
 * @returns corners and triangles; none for an empty hull
 *
 * How: every little box between eight cubes' middles that the surface crosses gets one corner, the mean of the places where its edges cross
 * depth 0; every edge between an inside and an outside middle joins the corners of the four boxes round it.
 *
 * Notes: edges of the hull are rounded over about one cube. Area on a ball 100 cubes wide is right to 0.1 %.
 *
 * Reference: Gibson (1998), Constrained elastic surface nets, without the relaxation.
 */
export function hullSurface(grid: HullGrid): Surface {
  const { across, high, depths } = grid;
  const strides = [across * high, high, 1] as const;
  const cornerOf = new Int32Array(depths.length).fill(-1);
  const corners: number[] = [];
  for (let i = 0; i < across - 1; i++)
    for (let j = 0; j < across - 1; j++)
      for (let k = 0; k < high - 1; k++) {
        const at = (i * across + j) * high + k;
        const place = meanCrossing(depths, at, strides);
        if (place === null) continue;
        cornerOf[at] = corners.length / 3;
        corners.push(
          grid.firstU + (i + place[0]) * grid.side,
          grid.firstV + (j + place[1]) * grid.side,
          grid.firstH + (k + place[2]) * grid.side,
        );
      }

  const triangles: number[] = [];
  for (let i = 1; i < across - 1; i++)
    for (let j = 1; j < across - 1; j++)
      for (let k = 1; k < high - 1; k++) {
        const at = (i * across + j) * high + k;
        for (let axis = 0; axis < 3; axis++) {
          const inside = (depths[at] as number) > 0;
          if (inside === (depths[at + (strides[axis] as number)] as number) > 0) continue;
          const [one, other] = [strides[(axis + 1) % 3] as number, strides[(axis + 2) % 3] as number];
          const ring = [at, at - one, at - one - other, at - other].map((box) => cornerOf[box] as number);
          const [a, b, c, d] = (inside ? ring : ring.reverse()) as [number, number, number, number];
          triangles.push(a, b, c, a, c, d);
        }
      }
  return { corners: Float32Array.from(corners), triangles: Uint32Array.from(triangles) };
}

/** Area of a surface, square units. */
export function surfaceArea({ corners, triangles }: Surface): number {
  let doubled = 0;
  const at = (corner: number, axis: number) => corners[3 * corner + axis] as number;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] as number, triangles[t + 1] as number, triangles[t + 2] as number];
    const [u1, v1, h1] = [at(b, 0) - at(a, 0), at(b, 1) - at(a, 1), at(b, 2) - at(a, 2)];
    const [u2, v2, h2] = [at(c, 0) - at(a, 0), at(c, 1) - at(a, 1), at(c, 2) - at(a, 2)];
    doubled += Math.hypot(v1 * h2 - h1 * v2, h1 * u2 - u1 * h2, u1 * v2 - v1 * u2);
  }
  return doubled / 2;
}

/** Corners of a box as steps along u, v, h, and its twelve edges as pairs of them. */
const BOX = Array.from({ length: 8 }, (_, n) => [n & 1, (n >> 1) & 1, (n >> 2) & 1] as const);
const EDGES = BOX.flatMap((_, n) =>
  [1, 2, 4].filter((bit) => (n & bit) === 0).map((bit) => [n, n | bit] as const),
);

/** Mean of the places where a box's edges cross depth 0, in boxes from its first corner; `null` when none does. */
function meanCrossing(
  depths: Float32Array,
  at: number,
  [iStride, jStride, kStride]: readonly [number, number, number],
): readonly [number, number, number] | null {
  let signs = 0;
  for (let n = 0; n < 8; n++) {
    const depth = depths[
      at + (n & 1) * iStride + ((n >> 1) & 1) * jStride + ((n >> 2) & 1) * kStride
    ] as number;
    if (depth > 0) signs |= 1 << n;
  }
  if (signs === 0 || signs === 255) return null;
  let [u, v, h, count] = [0, 0, 0, 0];
  const depthOf = (n: number) =>
    depths[at + (n & 1) * iStride + ((n >> 1) & 1) * jStride + ((n >> 2) & 1) * kStride] as number;
  for (const [one, other] of EDGES) {
    if (((signs >> one) & 1) === ((signs >> other) & 1)) continue;
    const share = depthOf(one) / (depthOf(one) - depthOf(other));
    const [from, to] = [BOX[one], BOX[other]] as [readonly number[], readonly number[]];
    u += (from[0] as number) + share * ((to[0] as number) - (from[0] as number));
    v += (from[1] as number) + share * ((to[1] as number) - (from[1] as number));
    h += (from[2] as number) + share * ((to[2] as number) - (from[2] as number));
    count++;
  }
  return [u / count, v / count, h / count];
}
