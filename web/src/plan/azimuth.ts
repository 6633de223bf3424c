import { radOf } from '../../../core/turned/circular-statistics.ts';
import type { Point } from '../photo/points.ts';

/**
 * A place on a drawing seen from above, azimuth 0 at its foot (6 o’clock) and 90 at its right; the middle is 0, 0 and y runs down.
 * Serves the plant's azimuths and directions from the camera alike: both run anticlockwise.
 */
export function placeAt(azimuthDeg: number, radius: number): Point {
  const azimuth = radOf(azimuthDeg);
  return [radius * Math.sin(azimuth), radius * Math.cos(azimuth)];
}

/** Azimuth of a place on the drawing, degrees, 0 up to 360; the middle itself has 0. */
export function azimuthAt([x, y]: Point): number {
  return ((Math.atan2(x, y) * 180) / Math.PI + 360) % 360;
}

/** Path through places, closed. */
export function ringPath(places: readonly Point[]): string {
  return places.length === 0 ? '' : `M${places.map(pointWords).join('L')}Z`;
}

/** Path through places, open. */
export function linePath(places: readonly Point[]): string {
  return places.length === 0 ? '' : `M${places.map(pointWords).join('L')}`;
}

/** Part of a circle from one azimuth anticlockwise to another, at most a whole turn. */
export function arcPath(fromDeg: number, toDeg: number, radius: number): string {
  return linePath(arcPlaces(fromDeg, toDeg, radius));
}

/** Slice of a ring between two radii, or of a disc when `inner` is 0. */
export function slicePath(
  fromDeg: number,
  toDeg: number,
  { inner, outer }: { inner: number; outer: number },
): string {
  const out = arcPlaces(fromDeg, toDeg, outer);
  const back: Point[] = inner === 0 ? [[0, 0]] : arcPlaces(fromDeg, toDeg, inner).reverse();
  return ringPath([...out, ...back]);
}

/** Close enough that a ring of chords looks round. */
const STEP_DEG = 3;

function arcPlaces(fromDeg: number, toDeg: number, radius: number): Point[] {
  const steps = Math.max(1, Math.ceil(Math.abs(toDeg - fromDeg) / STEP_DEG));
  return Array.from({ length: steps + 1 }, (_, k) =>
    placeAt(fromDeg + ((toDeg - fromDeg) * k) / steps, radius),
  );
}

function pointWords([x, y]: Point): string {
  return `${x.toFixed(2)} ${y.toFixed(2)}`;
}
