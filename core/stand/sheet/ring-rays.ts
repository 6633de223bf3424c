import type { PointPx } from '../../raster/raster.ts';
import { type Plane, planeAt } from './light-plane.ts';

/** A ring mark's place: its middle, and the matrix [a, b, c, d] that turns ring units into px. */
export interface RingFrame {
  readonly centrePx: PointPx;
  readonly unitsToPx: readonly [a: number, b: number, c: number, d: number];
}

/** Light along rays from a mark's middle outwards. */
export interface RingRays {
  readonly count: number;
  /** Samples to a ring unit; sample `s` lies at `(s + 0.5) / perUnit` units. */
  readonly perUnit: number;
  readonly samplesOfRay: number;
  /** Ray by ray. */
  readonly light: Float32Array;
}

export const RAYS = 72;

/** A ray reaches this far beyond the outermost edge, ring units: onto the quiet paper, not past it. */
export const BEYOND_UNITS = 0.75;

/** Samples the light on rays at even turns about the mark's middle, dense enough for a third of a px. */
export function sampleRays(plane: Plane, frame: RingFrame, outerUnits: number): RingRays {
  const perUnit = Math.min(80, Math.max(10, Math.ceil(unitPx(frame) / 0.35)));
  const samplesOfRay = Math.floor((outerUnits + BEYOND_UNITS) * perUnit);
  const light = new Float32Array(RAYS * samplesOfRay);
  for (let ray = 0; ray < RAYS; ray++) {
    const [alongX, alongY] = rayDirection(frame, ray);
    for (let s = 0; s < samplesOfRay; s++) {
      const units = (s + 0.5) / perUnit;
      const x = frame.centrePx[0] + alongX * units;
      light[ray * samplesOfRay + s] = planeAt(plane, x, frame.centrePx[1] + alongY * units);
    }
  }
  return { count: RAYS, perUnit, samplesOfRay, light };
}

export function rayTurn(ray: number): number {
  return (2 * Math.PI * (ray + 0.5)) / RAYS;
}

/** Mean width of a ring unit in the photo, px. */
export function unitPx({ unitsToPx: [a, b, c, d] }: RingFrame): number {
  return Math.sqrt(Math.abs(a * d - b * c));
}

function rayDirection({ unitsToPx: [a, b, c, d] }: RingFrame, ray: number): PointPx {
  const [cos, sin] = [Math.cos(rayTurn(ray)), Math.sin(rayTurn(ray))];
  return [a * cos + b * sin, c * cos + d * sin];
}

/** The mean over all rays, sample by sample. */
export function meanRay({ count, samplesOfRay, light }: RingRays): Float32Array {
  const mean = new Float32Array(samplesOfRay);
  for (let i = 0; i < light.length; i++) {
    const s = i % samplesOfRay;
    mean[s] = (mean[s] as number) + (light[i] as number) / count;
  }
  return mean;
}
