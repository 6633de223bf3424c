import { radOf, turnBetween, wholeTurn } from '../../../core/turned/circular-statistics.ts';

/** How a solid is looked at. */
export interface Turning {
  /** Azimuth that faces the eye, degrees. */
  readonly turnDeg: number;
  /** How far the eye stands above the level, degrees: 0 from the side, 90 from straight above. */
  readonly tiltDeg: number;
}

export const FIRST_LOOK: Turning = { turnDeg: 0, tiltDeg: 18 };
export const FROM_ABOVE_DEG = 90;

/** A turning a step further; the tilt stays between level and straight above. */
export function turnedBy({ turnDeg, tiltDeg }: Turning, byDeg: number, upDeg: number): Turning {
  return {
    turnDeg: wholeTurn(turnDeg + byDeg),
    tiltDeg: Math.min(Math.max(tiltDeg + upDeg, 0), FROM_ABOVE_DEG),
  };
}

/** Part of the way from one look to another, by the shorter way round. */
export function between(from: Turning, to: Turning, share: number): Turning {
  return {
    turnDeg: wholeTurn(from.turnDeg + share * turnBetween(from.turnDeg, to.turnDeg)),
    tiltDeg: from.tiltDeg + share * (to.tiltDeg - from.tiltDeg),
  };
}

/** The eye's right, up and towards the eye, each as (u, v, h). */
export interface EyeAxes {
  readonly right: Direction;
  readonly up: Direction;
  readonly near: Direction;
}
export type Direction = readonly [u: number, v: number, h: number];

export function eyeAxes({ turnDeg, tiltDeg }: Turning): EyeAxes {
  const [turn, tilt] = [radOf(turnDeg), radOf(tiltDeg)];
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return {
    right: [-sin, cos, 0],
    up: [-Math.sin(tilt) * cos, -Math.sin(tilt) * sin, Math.cos(tilt)],
    near: [Math.cos(tilt) * cos, Math.cos(tilt) * sin, Math.sin(tilt)],
  };
}

/** A point as the eye sees it from far away: right, down (as on a screen), and towards the eye. */
export function seen(
  point: Direction,
  { right, up, near }: EyeAxes,
): readonly [x: number, y: number, depth: number] {
  return [dot(point, right), -dot(point, up), dot(point, near)];
}

export function dot(a: Direction, b: Direction): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
