import { elevationOf, fitBall } from './fit-ball.ts';
import type { Mesh, Part } from './geometry/mesh.ts';
import {
  add,
  azimuthDirection,
  azimuthOf,
  dot,
  length,
  scale,
  subtract,
  type Vec3,
} from './geometry/vector.ts';
import type { BuiltPlant } from './plant/build-plant.ts';
import { type CameraSpec, type Pinhole, project } from './view/camera.ts';

/** What is known of a rendered photo, because the plant was built. Px of the upright photo; mm of the plant. */
export interface ViewTruth {
  readonly seed: number;
  readonly turnDeg: number;
  readonly rimMm: number;
  /** At the middle of the rim. */
  readonly mmPerPx: number;
  readonly axis: {
    readonly xPx: number;
    readonly rimLeftPx: readonly [number, number];
    readonly rimRightPx: readonly [number, number];
  };
  readonly camera: CameraSpec;
  /** Least-squares sphere through the canopy's outermost points in even directions, long stems left out. */
  readonly ball: { readonly centreMm: Vec3; readonly radiusMm: number } | null;
  readonly stems: readonly StemTruth[];
  readonly reach: readonly { readonly azimuthDeg: number; readonly mm: number }[];
  readonly canopy: { readonly areaPx: number; readonly widthMm: number; readonly heightMm: number };
}

export interface StemTruth {
  readonly shoot: number;
  readonly tipPx: readonly [number, number];
  /** In the plant's own frame: mark at azimuth 0 whatever the turn. */
  readonly tipMm: Vec3;
  readonly azimuthDeg: number;
  /** Seen from the ball's centre. */
  readonly elevationDeg: number;
  readonly lengthMm: number;
  readonly long: boolean;
  /** How far the shoot's outermost leaf or stem point stands outside the ball; negative inside. */
  readonly excessMm: number;
}

/** Gathers the truth of a plant that has not been turned yet; `canopyPx` is the area of the exact mask. */
export function truthOf(
  plant: BuiltPlant,
  options: {
    seed: number;
    turnDeg: number;
    rimMm: number;
    camera: CameraSpec;
    pinhole: Pinhole;
    canopyPx: number;
  },
): ViewTruth {
  const points = canopyPoints(plant.mesh);
  const longShoots = new Set(plant.tips.filter((tip) => tip.long).map((tip) => tip.shoot));
  const ball = fitBall(
    points.filter((one) => !longShoots.has(one.shoot)).map((one) => one.point),
    plant.centre,
  );
  const excess = new Map<number, number>();
  if (ball) {
    for (const { point, shoot } of points) {
      const beyond = length(subtract(point, ball.centreMm)) - ball.radiusMm;
      excess.set(shoot, Math.max(excess.get(shoot) ?? -1e9, beyond));
    }
  }
  const facing = (azimuthDeg: number): Vec3 => azimuthDirection(azimuthDeg - options.turnDeg);
  const seen = (point: Vec3): readonly [number, number] => {
    const azimuth = azimuthOf(point);
    const level = Math.hypot(point[0], point[1]);
    const turned = add(scale(facing(azimuth), level), [0, 0, point[2]]);
    const { xPx, yPx } = project(options.pinhole, turned);
    return [round(xPx, 2), round(yPx, 2)];
  };
  const rim = rimEnds(options.pinhole, options.rimMm);
  const middle = project(options.pinhole, [0, 0, 0]);
  const reach = Array.from({ length: 24 }, (_, step) => {
    const direction = azimuthDirection(step * 15);
    const mm = points.reduce((most, { point }) => Math.max(most, dot(point, direction)), 0);
    return { azimuthDeg: step * 15, mm: round(mm, 1) };
  });
  const right = azimuthDirection(90 + options.turnDeg);
  const across = points.map(({ point }) => dot(point, right));
  const heights = points.map(({ point }) => point[2]);
  return {
    seed: options.seed,
    turnDeg: options.turnDeg,
    rimMm: options.rimMm,
    mmPerPx: round(middle.depthMm / options.pinhole.focalPx, 6),
    axis: { xPx: round(middle.xPx, 2), ...rim },
    camera: options.camera,
    ball: ball && {
      centreMm: ball.centreMm.map((mm) => round(mm, 2)) as unknown as Vec3,
      radiusMm: round(ball.radiusMm, 2),
    },
    stems: plant.tips.map((tip) => ({
      shoot: tip.shoot,
      tipPx: seen(tip.tip),
      tipMm: tip.tip.map((mm) => round(mm, 2)) as unknown as Vec3,
      azimuthDeg: round(azimuthOf(tip.tip), 1),
      elevationDeg: round(elevationOf(subtract(tip.tip, ball?.centreMm ?? [0, 0, 0])), 1),
      lengthMm: round(tip.lengthMm, 1),
      long: tip.long,
      excessMm: round(excess.get(tip.shoot) ?? 0, 1),
    })),
    reach,
    canopy: {
      areaPx: options.canopyPx,
      widthMm: round(span(across), 1),
      heightMm: round(span(heights), 1),
    },
  };
}

/** The outer ends of the rim's edge as the camera sees it: found on a fine polygon of the top edge. */
export function rimEnds(
  camera: Pinhole,
  rimMm: number,
): { rimLeftPx: readonly [number, number]; rimRightPx: readonly [number, number] } {
  let left: readonly [number, number] = [Number.POSITIVE_INFINITY, 0];
  let right: readonly [number, number] = [Number.NEGATIVE_INFINITY, 0];
  for (let step = 0; step < 3600; step++) {
    const { xPx, yPx } = project(camera, scale(azimuthDirection(step / 10), rimMm / 2));
    if (xPx < left[0]) left = [xPx, yPx];
    if (xPx > right[0]) right = [xPx, yPx];
  }
  return {
    rimLeftPx: [round(left[0], 2), round(left[1], 2)],
    rimRightPx: [round(right[0], 2), round(right[1], 2)],
  };
}

function canopyPoints(mesh: Mesh): { point: Vec3; shoot: number }[] {
  const partOfPoint = new Int32Array(mesh.positions.length / 3);
  mesh.corners.forEach((corner, index) => {
    partOfPoint[corner] = mesh.partOf[Math.floor(index / 3)] as number;
  });
  const points: { point: Vec3; shoot: number }[] = [];
  for (let at = 0; at < partOfPoint.length; at++) {
    const part = mesh.parts[partOfPoint[at] as number] as Part;
    if (!part.canopy) continue;
    const point: Vec3 = [
      mesh.positions[3 * at] as number,
      mesh.positions[3 * at + 1] as number,
      mesh.positions[3 * at + 2] as number,
    ];
    points.push({ point, shoot: part.shoot });
  }
  return points;
}

function span(values: readonly number[]): number {
  if (values.length === 0) return 0;
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return high - low;
}

function round(value: number, digits: number): number {
  const unit = 10 ** digits;
  return Math.round(value * unit) / unit;
}
