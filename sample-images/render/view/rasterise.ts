import type { Mesh } from '../geometry/mesh.ts';
import type { Pinhole } from './camera.ts';

/** Which triangle each sample of the photo sees: -1 for none. `perSide` samples a px in each direction. */
export interface Visible {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly perSide: number;
  readonly triangle: Int32Array;
  /** Projected points, three numbers each: x and y in samples, and one over depth. */
  readonly projected: Float64Array;
}

/** Projects the mesh and keeps the nearest triangle of every sample (z-buffer, Catmull 1974). */
export function rasterise(
  mesh: Mesh,
  camera: Pinhole,
  widthPx: number,
  heightPx: number,
  perSide: number,
): Visible {
  const width = widthPx * perSide;
  const height = heightPx * perSide;
  const projected = projectAll(mesh, camera, perSide);
  const triangle = new Int32Array(width * height).fill(-1);
  const nearness = new Float32Array(width * height);
  const { corners } = mesh;
  for (let index = 0; index < mesh.partOf.length; index++) {
    const a = (corners[index * 3] as number) * 3;
    const b = (corners[index * 3 + 1] as number) * 3;
    const c = (corners[index * 3 + 2] as number) * 3;
    const ax = projected[a] as number;
    const ay = projected[a + 1] as number;
    const bx = projected[b] as number;
    const by = projected[b + 1] as number;
    const cx = projected[c] as number;
    const cy = projected[c + 1] as number;
    const area = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
    if (Math.abs(area) < 1e-9) continue;
    const az = projected[a + 2] as number;
    const slopeB = ((projected[b + 2] as number) - az) / area;
    const slopeC = ((projected[c + 2] as number) - az) / area;
    // Samples lie at +0.5; the range below covers every sample inside the triangle's box.
    const left = Math.max(0, Math.ceil(Math.min(ax, bx, cx) - 0.5));
    const right = Math.min(width - 1, Math.floor(Math.max(ax, bx, cx) - 0.5));
    const top = Math.max(0, Math.ceil(Math.min(ay, by, cy) - 0.5));
    const bottom = Math.min(height - 1, Math.floor(Math.max(ay, by, cy) - 0.5));
    const sign = area > 0 ? 1 : -1;
    for (let y = top; y <= bottom; y++) {
      const dy = y + 0.5 - ay;
      for (let x = left; x <= right; x++) {
        const dx = x + 0.5 - ax;
        const weightB = dx * (cy - ay) - dy * (cx - ax);
        const weightC = dy * (bx - ax) - dx * (by - ay);
        if (weightB * sign < 0 || weightC * sign < 0 || (area - weightB - weightC) * sign < 0) continue;
        const near = az + weightB * slopeB + weightC * slopeC;
        const at = y * width + x;
        if (near > (nearness[at] as number)) {
          nearness[at] = near;
          triangle[at] = index;
        }
      }
    }
  }
  return { widthPx, heightPx, perSide, triangle, projected };
}

function projectAll(mesh: Mesh, camera: Pinhole, perSide: number): Float64Array {
  const { positions } = mesh;
  const projected = new Float64Array(positions.length);
  const { eye, right, up, ahead } = camera;
  for (let at = 0; at < positions.length; at += 3) {
    const x = (positions[at] as number) - eye[0];
    const y = (positions[at + 1] as number) - eye[1];
    const z = (positions[at + 2] as number) - eye[2];
    const depth = x * ahead[0] + y * ahead[1] + z * ahead[2];
    if (depth < 20) throw new RangeError('Expected the whole scene in front of the camera');
    const zoom = (camera.focalPx * perSide) / depth;
    projected[at] = camera.centrePx[0] * perSide + zoom * (x * right[0] + y * right[1] + z * right[2]);
    projected[at + 1] = camera.centrePx[1] * perSide - zoom * (x * up[0] + y * up[1] + z * up[2]);
    projected[at + 2] = 1 / depth;
  }
  return projected;
}
