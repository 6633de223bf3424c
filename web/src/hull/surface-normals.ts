import type { Direction } from './turning.ts';

/** Square to a triangle, outwards when its corners run anticlockwise seen from outside; as long as twice its area. */
export function crossOf(a: Direction, b: Direction, c: Direction): Direction {
  const [u1, v1, h1] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [u2, v2, h2] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  return [v1 * h2 - h1 * v2, h1 * u2 - u1 * h2, u1 * v2 - v1 * u2];
}

/** Mean outward direction of the triangles round each corner, by their area; length 1, or 0 where no triangle is. */
export function smoothNormals(corners: Float32Array, triangles: Uint32Array): Float32Array {
  const normals = new Float32Array(corners.length);
  const at = (corner: number): Direction => [
    corners[3 * corner] as number,
    corners[3 * corner + 1] as number,
    corners[3 * corner + 2] as number,
  ];
  for (let t = 0; t + 2 < triangles.length; t += 3) {
    const face = [triangles[t] as number, triangles[t + 1] as number, triangles[t + 2] as number] as const;
    const cross = crossOf(at(face[0]), at(face[1]), at(face[2]));
    for (const corner of face)
      for (let axis = 0; axis < 3; axis++) {
        normals[3 * corner + axis] = (normals[3 * corner + axis] as number) + (cross[axis] as number);
      }
  }
  for (let k = 0; k + 2 < normals.length; k += 3) {
    const length = Math.hypot(normals[k] as number, normals[k + 1] as number, normals[k + 2] as number);
    if (length === 0) continue;
    for (let axis = 0; axis < 3; axis++) normals[k + axis] = (normals[k + axis] as number) / length;
  }
  return normals;
}
