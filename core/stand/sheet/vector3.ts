import type { Point3 } from './sheet-reading.ts';

export function plus(a: Point3, b: Point3): Point3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function minus(a: Point3, b: Point3): Point3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function times(a: Point3, factor: number): Point3 {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

export function dot(a: Point3, b: Point3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Point3, b: Point3): Point3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function length(a: Point3): number {
  return Math.hypot(a[0], a[1], a[2]);
}

export function unit(a: Point3): Point3 {
  return times(a, 1 / length(a));
}
