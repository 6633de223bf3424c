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
  const places: [number, number][] = [];
  for (let at = 0; at < turned.positions.length; at += 3) {
    const { xPx, yPx } = project(view.camera, turned.positions.slice(at, at + 3) as unknown as Vec3);
    places.push([xPx, yPx]);
  }
  const { centreMm, radiusMm } = view.ball;
  const level = Math.hypot(centreMm[0], centreMm[1]);
  const facing = azimuthDirection(azimuthOf(centreMm) - view.turnDeg);
  const centre = project(view.camera, [level * facing[0], level * facing[1], centreMm[2]]);
  // A near camera sees a ball's outline before its middle, so a little larger.
  const distance = centre.depthMm;
  const seenRadiusMm = (radiusMm * distance) / Math.sqrt(distance ** 2 - radiusMm ** 2);
  return shoots.map((shoot) => {
    let outermost: [number, number] = [centre.xPx, centre.yPx];
    let far = 0;
    turned.corners.forEach((corner, index) => {
      if (partAt(turned, index).shoot !== shoot) return;
      const [x, y] = places[corner] as [number, number];
      const away = Math.hypot(x - centre.xPx, y - centre.yPx);
      if (away <= far) return;
      far = away;
      outermost = [x, y];
    });
    return {
      shoot,
      outermostPx: outermost,
      excessMm: far * view.mmPerPx - seenRadiusMm,
      onOutline: !coveredByOthers(turned, places, outermost, shoot),
    };
  });
}

function coveredByOthers(
  mesh: Mesh,
  places: readonly (readonly [number, number])[],
  [x, y]: readonly [number, number],
  shoot: number,
): boolean {
  for (let index = 0; index < mesh.corners.length; index += 3) {
    const part = partAt(mesh, index);
    if (part.shoot === shoot || !part.canopy) continue;
    const [a, b, c] = [0, 1, 2].map((k) => places[mesh.corners[index + k] as number]) as [
      readonly [number, number],
      readonly [number, number],
      readonly [number, number],
    ];
    const side = (p: readonly [number, number], q: readonly [number, number]) =>
      (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]);
    const [ab, bc, ca] = [side(a, b), side(b, c), side(c, a)];
    if ((ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0)) return true;
  }
  return false;
}

function partAt(mesh: Mesh, cornerIndex: number): Part {
  return mesh.parts[mesh.partOf[Math.floor(cornerIndex / 3)] as number] as Part;
}
