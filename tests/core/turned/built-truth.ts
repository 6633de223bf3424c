import { fitBall } from '../../../sample-images/render/fit-ball.ts';
import { azimuthDirection, dot, type Vec3 } from '../../../sample-images/render/geometry/vector.ts';
import { buildPlant } from '../../../sample-images/render/plant/build-plant.ts';
import type { ViewOptions } from '../../../sample-images/render/render-view.ts';

/** What is known of a rendered plant's plan, because it was built. */
export interface BuiltTruth {
  /** Through the outermost leaves and tips. */
  readonly ball: { readonly centreMm: Vec3; readonly radiusMm: number };
  /** How far the canopy reaches towards an azimuth, mm. */
  readonly supports: (azimuthDeg: number) => number;
}

export function builtTruth({ plant, week, cuts }: ViewOptions): BuiltTruth {
  const { mesh, centre } = buildPlant(plant, week, cuts, 'fine');
  const isCanopy = new Uint8Array(mesh.positions.length / 3);
  mesh.corners.forEach((corner, k) => {
    if (mesh.parts[mesh.partOf[Math.floor(k / 3)] as number]?.canopy) isCanopy[corner] = 1;
  });
  const points = Array.from(isCanopy.keys())
    .filter((k) => isCanopy[k] === 1)
    .map((k): Vec3 => [0, 1, 2].map((axis) => mesh.positions[3 * k + axis] as number) as unknown as Vec3);
  const ball = fitBall(points, centre);
  if (ball === null) throw new Error('Expected a plant with a ball but built none');
  return {
    ball,
    supports: (azimuthDeg) => {
      const direction = azimuthDirection(azimuthDeg);
      return points.reduce((most, point) => Math.max(most, dot(point, direction)), 0);
    },
  };
}
