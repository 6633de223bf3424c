import { type Mesh, type Part, turnMesh } from './geometry/mesh.ts';
import { azimuthDirection, azimuthOf, type Vec3 } from './geometry/vector.ts';
import { type Pinhole, project } from './view/camera.ts';

/** How one photo shows a shoot. */
export interface ShootInView {
  readonly shoot: number;
  /** Its outermost point as seen from the ball's centre. */
  readonly outermostPx: readonly [number, number];
  /** How far that stands outside the ball's outline, at the plane of the axis. */
  readonly excessMm: number;
  /** Whether nothing else of the plant covers that place, so that the silhouette shows it. */
  readonly onOutline: boolean;
}

/**
 * How a photo shows some shoots of a plant.
 *
 * @param mesh the plant, not turned
 * @param ball of the truth, mm
 */
export function shootsInView(
  mesh: Mesh,
  shoots: readonly number[],
  view: { turnDeg: number; camera: Pinhole; mmPerPx: number; ball: { centreMm: Vec3; radiusMm: number } },
): ShootInView[] {
  const turned: Mesh = { ...mesh, positions: [...mesh.positions], normals: [] };
  turnMesh(turned, view.turnDeg);
  const [xs, ys] = projected(turned, view.camera);
  const { centreMm, radiusMm } = view.ball;
  const level = Math.hypot(centreMm[0], centreMm[1]);
  const facing = azimuthDirection(azimuthOf(centreMm) - view.turnDeg);
  const centre = project(view.camera, [level * facing[0], level * facing[1], centreMm[2]]);
  // A near camera sees a ball's outline before its middle, so a little larger.
  const distance = centre.depthMm;
  const seenRadiusMm = (radiusMm * distance) / Math.sqrt(distance ** 2 - radiusMm ** 2);
  const outermost = new Map(shoots.map((shoot) => [shoot, { corner: -1, far: 0 }]));
  for (let index = 0; index < turned.corners.length; index++) {
    const best = outermost.get((turned.parts[turned.partOf[Math.floor(index / 3)] as number] as Part).shoot);
    if (best === undefined) continue;
    const corner = turned.corners[index] as number;
    const [dx, dy] = [(xs[corner] as number) - centre.xPx, (ys[corner] as number) - centre.yPx];
    const far = Math.sqrt(dx * dx + dy * dy);
    if (far <= best.far) continue;
    best.corner = corner;
    best.far = far;
  }
  return [...outermost].flatMap(([shoot, { corner, far }]): ShootInView[] => {
    if (corner < 0) return [];
    const place = [xs[corner] as number, ys[corner] as number] as const;
    return [
      {
        shoot,
        outermostPx: place,
        excessMm: far * view.mmPerPx - seenRadiusMm,
        onOutline: !coveredByOthers(turned, [xs, ys], place, shoot),
      },
    ];
  });
}

function projected(mesh: Mesh, camera: Pinhole): readonly [Float64Array, Float64Array] {
  const count = mesh.positions.length / 3;
  const [xs, ys] = [new Float64Array(count), new Float64Array(count)];
  for (let k = 0; k < count; k++) {
    const at = 3 * k;
    const point: Vec3 = [
      mesh.positions[at] as number,
      mesh.positions[at + 1] as number,
      mesh.positions[at + 2] as number,
    ];
    const { xPx, yPx } = project(camera, point);
    xs[k] = xPx;
    ys[k] = yPx;
  }
  return [xs, ys];
}

/** Whether a triangle of the canopy that is not the shoot's own lies over a place. */
function coveredByOthers(
  { corners, partOf, parts }: Mesh,
  [xs, ys]: readonly [Float64Array, Float64Array],
  [x, y]: readonly [number, number],
  shoot: number,
): boolean {
  for (let index = 0; index < corners.length; index += 3) {
    const [a, b, c] = [corners[index] as number, corners[index + 1] as number, corners[index + 2] as number];
    const [ax, bx, cx] = [(xs[a] as number) - x, (xs[b] as number) - x, (xs[c] as number) - x];
    // Most triangles lie to one side.
    if ((ax > 0 && bx > 0 && cx > 0) || (ax < 0 && bx < 0 && cx < 0)) continue;
    const part = parts[partOf[index / 3] as number] as Part;
    if (part.shoot === shoot || !part.canopy) continue;
    const [ay, by, cy] = [(ys[a] as number) - y, (ys[b] as number) - y, (ys[c] as number) - y];
    const [ab, bc, ca] = [ax * by - bx * ay, bx * cy - cx * by, cx * ay - ax * cy];
    if ((ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0)) return true;
  }
  return false;
}
