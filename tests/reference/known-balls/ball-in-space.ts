import type { PointPx } from '../../../core/raster/raster.ts';

/** A bump (height above 0) or dent (below 0) on the ball, bell-shaped. */
export interface Bump {
  /** Share of the ball's radius. */
  readonly height: number;
  /** Standard deviation of the bell, degrees as seen from the ball's middle. */
  readonly widthDeg: number;
  /** Where it sits: degrees above the ball's equator, and round it from the right (0) towards the camera (90). */
  readonly upDeg: number;
  readonly roundDeg: number;
}

/** A ball in space, in mm, on a pot before a camera that looks at its middle. */
export interface BallInSpace {
  readonly name: string;
  readonly bumps: readonly Bump[];
  /** Height as a share of width. */
  readonly flattening: number;
  /** Sideways place of the ball's middle, share of its radius, right positive; the plant leans from its foot. */
  readonly lean: number;
}

/** The photo that is taken of it, px and mm. */
export const PHOTO = { widthPx: 1600, heightPx: 1200, focalPx: 2400 } as const;
export const BALL_RADIUS_MM = 180;
export const CAMERA_MM = 1200;
/** The ball's middle above the rim, and the rim's half width, as shares of the ball's radius. */
export const RIM_BELOW = 0.75;
export const RIM_HALF_WIDTH = 0.36;

const DIRECTIONS = 3600;
const DEPTHS = 360;

/** The outline of a ball in the photo: closed, px. */
export interface OutlineInPhoto {
  readonly points: readonly PointPx[];
  readonly inside: (x: number, y: number) => boolean;
  readonly rimYPx: number;
  readonly axisXPx: number;
  readonly rimHalfWidthPx: number;
}

/**
 * The silhouette of the ball as a pinhole camera sees it, from its formula.
 *
 * A body that is star-shaped about its middle, seen along a line through that middle, has a star-shaped silhouette: in each
 * direction of the picture its edge is the farthest image among the surface points of that plane. Flattening and
 * lean are then a linear map of the picture.
 */
export function outlineOf({ bumps, flattening, lean }: BallInSpace): OutlineInPhoto {
  const peaks = bumps.map((bump) => ({ ...bump, towards: unit(bump.upDeg, bump.roundDeg) }));
  const radiusAt = (x: number, y: number, z: number) =>
    BALL_RADIUS_MM *
    peaks.reduce((sum, { height, widthDeg, towards }) => {
      const off = Math.acos(Math.max(-1, Math.min(1, x * towards[0] + y * towards[1] + z * towards[2])));
      return sum + height * Math.exp(-0.5 * ((off * 180) / Math.PI / widthDeg) ** 2);
    }, 1);
  const edgePx = Float64Array.from({ length: DIRECTIONS }, (_, k) => {
    const angle = (2 * Math.PI * k) / DIRECTIONS;
    const imageAt = (depth: number) => {
      const across = Math.cos(depth);
      const radius = radiusAt(across * Math.cos(angle), across * Math.sin(angle), Math.sin(depth));
      return (PHOTO.focalPx * radius * across) / (CAMERA_MM - radius * Math.sin(depth));
    };
    return largest(imageAt);
  });

  const scalePx = (PHOTO.focalPx * BALL_RADIUS_MM) / CAMERA_MM;
  const rimYPx = PHOTO.heightPx / 2 + RIM_BELOW * scalePx;
  const axisXPx = PHOTO.widthPx / 2;
  // Above the rim the plant leans: what stands one radius higher stands `lean ÷ RIM_BELOW` radii further aside.
  const shear = lean / RIM_BELOW;
  const middleY = rimYPx - flattening * RIM_BELOW * scalePx;
  const points = Array.from(edgePx, (edge, k): PointPx => {
    const angle = (2 * Math.PI * k) / DIRECTIONS;
    const y = middleY - flattening * edge * Math.sin(angle);
    return [axisXPx + edge * Math.cos(angle) + shear * (rimYPx - y), y];
  });
  const inside = (x: number, y: number) => {
    const up = (middleY - y) / flattening;
    const right = x - axisXPx - shear * (rimYPx - y);
    const turn = ((Math.atan2(up, right) / (2 * Math.PI) + 1) % 1) * DIRECTIONS;
    const below = Math.floor(turn) % DIRECTIONS;
    const [one, next] = [edgePx[below] as number, edgePx[(below + 1) % DIRECTIONS] as number];
    return Math.hypot(right, up) < one + (turn - Math.floor(turn)) * (next - one);
  };
  return { points, inside, rimYPx, axisXPx, rimHalfWidthPx: RIM_HALF_WIDTH * scalePx };
}

/** Whether the pot stands before a place of the photo. */
export function isBehindPot(
  { rimYPx, axisXPx, rimHalfWidthPx }: OutlineInPhoto,
  x: number,
  y: number,
): boolean {
  return y > rimYPx && Math.abs(x - axisXPx) < rimHalfWidthPx;
}

function unit(upDeg: number, roundDeg: number): readonly [number, number, number] {
  const [up, round] = [(upDeg * Math.PI) / 180, (roundDeg * Math.PI) / 180];
  return [Math.cos(up) * Math.cos(round), Math.sin(up), Math.cos(up) * Math.sin(round)];
}

/** Largest value over all depths: an even search, then the parabola through the best three. */
function largest(valueAt: (depth: number) => number): number {
  const step = Math.PI / DEPTHS;
  let [best, bestDepth] = [0, 0];
  for (let k = 1; k < DEPTHS; k++) {
    const depth = -Math.PI / 2 + k * step;
    const value = valueAt(depth);
    if (value > best) [best, bestDepth] = [value, depth];
  }
  const [before, after] = [valueAt(bestDepth - step), valueAt(bestDepth + step)];
  const bend = before - 2 * best + after;
  return bend < 0 ? best - (before - after) ** 2 / (8 * bend) : best;
}
