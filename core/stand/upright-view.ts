import type { PointPx } from '../raster/raster.ts';

/** How px of the raster and px of the upright view belong together. */
export interface UprightView {
  readonly toUpright: (point: PointPx) => PointPx;
  readonly toRaster: (point: PointPx) => PointPx;
  /** Angle between the plant's middle and the camera's axis that was taken out, radians; 0 when none was. */
  readonly offAxisRad: number;
}

/** A turn below this moves no score by as much as drawing the mask anew does, degrees. */
const LEAST_TURN_DEG = 0.1;
/** Below this a ball beside the middle reads less than 0.1 % oval, radians. */
const LEAST_OFF_AXIS_RAD = 0.04;

/** What an upright view is made from. Px of the raster. */
export interface ViewClues {
  readonly widthPx: number;
  readonly heightPx: number;
  /** By how much the picture is turned against the stand, clockwise, degrees; 0 when not known. */
  readonly turnDeg: number;
  /** `null` when not known: then what lies beside the middle stays as it reads. */
  readonly focalLengthPx: number | null;
  /** Where the plant's middle lies. */
  readonly plantPx: PointPx;
}

/**
 * The view in which a plant is measured: turned back to where the stand is upright, and, when the focal length is known, as
 * if the camera had looked straight at the plant, so that a ball beside the picture's middle reads round.
 *
 * @returns `null` when the raster is as good: nothing is known, or both are too small to matter
 *
 * Notes: the turn is about the plant's middle, which stays in place and keeps its size. A zoom is not taken out: no measure
 * depends on it. Looking elsewhere is a turn of the camera about its own place, which is exact for what stands at any
 * distance; the picture's middle is taken for the camera's axis, so a cropped photo must not come with a focal length.
 *
 * Reference: Hartley, Zisserman (2004), Multiple View Geometry, §8.4.2, the homography of a rotating camera.
 */
export function uprightView(clues: ViewClues): UprightView | null {
  const { widthPx, heightPx, focalLengthPx, plantPx } = clues;
  const turnRad = Math.abs(clues.turnDeg) < LEAST_TURN_DEG ? 0 : (clues.turnDeg * Math.PI) / 180;
  const aside: PointPx = [plantPx[0] - widthPx / 2, plantPx[1] - heightPx / 2];
  const offAxisRad = focalLengthPx === null ? 0 : Math.atan(Math.hypot(...aside) / focalLengthPx);
  const looks = focalLengthPx !== null && offAxisRad >= LEAST_OFF_AXIS_RAD;
  if (turnRad === 0 && !looks) return null;
  const look = looks ? lookAt(aside, focalLengthPx) : null;
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  const [x, y] = plantPx;
  return {
    offAxisRad: looks ? offAxisRad : 0,
    toUpright: (point) => {
      const [u, v] = look?.ahead(fromMiddle(point, clues)) ?? [point[0] - x, point[1] - y];
      return [x + cos * u + sin * v, y - sin * u + cos * v];
    },
    toRaster: (point) => {
      const [u, v] = [point[0] - x, point[1] - y];
      const turned: PointPx = [cos * u - sin * v, sin * u + cos * v];
      if (look === null) return [x + turned[0], y + turned[1]];
      const [across, down] = look.back(turned);
      return [across + widthPx / 2, down + heightPx / 2];
    },
  };
}

function fromMiddle([x, y]: PointPx, { widthPx, heightPx }: ViewClues): PointPx {
  return [x - widthPx / 2, y - heightPx / 2];
}

/** The shortest turn of the camera that brings a place of its picture to the picture's middle; places from the middle, px. */
function lookAt([asideX, asideY]: PointPx, focalPx: number) {
  // Rodrigues' formula about the axis across the way to turn.
  const length = Math.hypot(asideX, asideY);
  const [nx, ny] = [asideX / length, asideY / length];
  const angle = Math.atan(length / focalPx);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turned = (point: PointPx, way: 1 | -1): PointPx => {
    const along = point[0] * nx + point[1] * ny;
    const depth = cos * focalPx + way * sin * along;
    const newAlong = cos * along - way * sin * focalPx;
    const [acrossX, acrossY] = [point[0] - along * nx, point[1] - along * ny];
    const scale = focalPx / depth;
    return [scale * (newAlong * nx + acrossX), scale * (newAlong * ny + acrossY)];
  };
  return {
    ahead: (point: PointPx) => turned(point, 1),
    back: (point: PointPx) => turned(point, -1),
  };
}
