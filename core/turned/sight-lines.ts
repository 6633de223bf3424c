import { radOf } from './circular-statistics.ts';
import type { Camera, NearCamera, PlantPoint, PlanUnit, TurnedView } from './turned-view.ts';

/**
 * How a view sees the plant. Places on its picture are given at the plane of the axis: `x` right of the axis and `y` above the rim
 * plane, in the plan's unit.
 */
export interface ViewSight {
  readonly turnRad: number;
  readonly cos: number;
  readonly sin: number;
  /** Plan units a px. */
  readonly unitPerPx: number;
  /** In the plan's unit; `null` when the camera counts as far away and level: sight lines are level and parallel. */
  readonly camera: NearCamera | null;
}

/** A half line from the camera (or from far away) through a place on the picture; `towards` has length 1. */
export interface SightLine {
  readonly from: PlantPoint;
  readonly towards: PlantPoint;
}

/**
 * How a view of known turn sees the plant.
 *
 * @param ballRadius of the plant, plan's unit: the measure of a camera at a supposed distance
 */
export function sightOf(
  view: TurnedView & { readonly turnDeg: number },
  unit: PlanUnit,
  camera: Camera | null,
  ballRadius: number,
): ViewSight {
  const turnRad = radOf(view.turnDeg);
  return {
    turnRad,
    cos: Math.cos(turnRad),
    sin: Math.sin(turnRad),
    unitPerPx: unitPerPx(view, unit),
    camera: cameraInPlan(unit, camera, ballRadius),
  };
}

/** Plan units a px of a view. */
export function unitPerPx({ mmPerPx }: TurnedView, unit: PlanUnit): number {
  return unit === 'mm' ? (mmPerPx ?? 1) : 1;
}

/** Usual distance of a camera from the plant in radii of its ball: 1.5 m before a ball of 30 cm. Our own choice. */
export const USUAL_DISTANCE_IN_RADII = 10;

function cameraInPlan(unit: PlanUnit, camera: Camera | null, ballRadius: number): NearCamera | null {
  if (camera === null) return null;
  if ('distanceMm' in camera) {
    if (unit === 'mm') return camera;
    const slope = camera.heightMm / camera.distanceMm;
    const distance = USUAL_DISTANCE_IN_RADII * ballRadius;
    return { distanceMm: distance, heightMm: distance * slope };
  }
  const distance = camera.distanceInRadii * ballRadius;
  return { distanceMm: distance, heightMm: distance * Math.tan(radOf(camera.elevationDeg)) };
}

/**
 * Where a point of the plant stands on the picture.
 *
 * @returns x right of the axis, y above the rim plane, at the plane of the axis; and how much larger than there it is seen
 *
 * Notes: pinhole camera with a level axis that meets the plant axis: what stands nearer by w is seen larger by D ÷ (D − w) about the point
 * of the picture level with the camera.
 */
export function seenAt(
  { cos, sin, camera }: ViewSight,
  [u, v, h]: PlantPoint,
): { x: number; y: number; zoom: number } {
  const across = v * cos - u * sin;
  if (camera === null) return { x: across, y: h, zoom: 1 };
  const towardsCamera = u * cos + v * sin;
  const zoom = camera.distanceMm / (camera.distanceMm - towardsCamera);
  return { x: across * zoom, y: camera.heightMm + (h - camera.heightMm) * zoom, zoom };
}

/** The sight line through a place on the picture. */
export function sightLine({ cos, sin, camera }: ViewSight, x: number, y: number): SightLine {
  if (camera === null) return { from: [-x * sin, x * cos, y], towards: [-cos, -sin, 0] };
  const { distanceMm, heightMm } = camera;
  const [u, v, h] = [-x * sin - distanceMm * cos, x * cos - distanceMm * sin, y - heightMm];
  const length = Math.hypot(u, v, h);
  return {
    from: [distanceMm * cos, distanceMm * sin, heightMm],
    towards: [u / length, v / length, h / length],
  };
}
