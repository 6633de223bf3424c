import { along, cross, dot, subtract, turnAbout, UP, unit, type Vec3 } from '../geometry/vector.ts';

/** A camera on its stand. Lengths in mm from the middle of the pot rim; px are of the finished photo. */
export interface CameraSpec {
  /** Level distance from the plant's axis. */
  readonly distanceMm: number;
  /** Height of the lens above the rim. */
  readonly heightMm: number;
  /** Point of the axis plane that falls on the middle of the photo: to the right, and above the rim. */
  readonly aimMm: readonly [right: number, up: number];
  /** Width that the photo spans at the aimed point. */
  readonly fieldMm: number;
  readonly rollDeg: number;
}

/** A pinhole camera ready to project. */
export interface Pinhole {
  readonly eye: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
  readonly ahead: Vec3;
  readonly focalPx: number;
  readonly centrePx: readonly [number, number];
}

export function pinhole(camera: CameraSpec, widthPx: number, heightPx: number): Pinhole {
  const eye: Vec3 = [0, -camera.distanceMm, camera.heightMm];
  const aim: Vec3 = [camera.aimMm[0], 0, camera.aimMm[1]];
  const ahead = unit(subtract(aim, eye));
  const levelRight = unit(cross(ahead, UP));
  const rollRad = (camera.rollDeg * Math.PI) / 180;
  const right = turnAbout(levelRight, ahead, rollRad);
  const depth = dot(subtract(aim, eye), ahead);
  return {
    eye,
    right,
    up: cross(right, ahead),
    ahead,
    focalPx: (widthPx * depth) / camera.fieldMm,
    centrePx: [widthPx / 2, heightPx / 2],
  };
}

/** Where a point appears, px, and its depth along the line of sight, mm. */
export function project(camera: Pinhole, point: Vec3): { xPx: number; yPx: number; depthMm: number } {
  const offset = subtract(point, camera.eye);
  const depthMm = dot(offset, camera.ahead);
  return {
    xPx: camera.centrePx[0] + (camera.focalPx * dot(offset, camera.right)) / depthMm,
    yPx: camera.centrePx[1] - (camera.focalPx * dot(offset, camera.up)) / depthMm,
    depthMm,
  };
}

/** The unit direction of sight through a place in the photo, px. */
export function sightLine(camera: Pinhole, xPx: number, yPx: number): Vec3 {
  const rightward = (xPx - camera.centrePx[0]) / camera.focalPx;
  const upward = (camera.centrePx[1] - yPx) / camera.focalPx;
  return unit(along(along(camera.ahead, camera.right, rightward), camera.up, upward));
}
