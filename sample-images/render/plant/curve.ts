import { add, along, length, scale, subtract, unit, type Vec3 } from '../geometry/vector.ts';

/** A stem's line: points a few mm apart with the way travelled to each. */
export interface Curve {
  readonly points: readonly Vec3[];
  readonly travelledMm: readonly number[];
  readonly lengthMm: number;
}

/** A smooth line from `start` to `end` that leaves and arrives in the given unit directions (cubic Hermite). */
export function smoothCurve(start: Vec3, leaving: Vec3, end: Vec3, arriving: Vec3): Curve {
  const span = length(subtract(end, start));
  const steps = Math.max(4, Math.ceil(span / 4));
  const points: Vec3[] = [];
  for (let step = 0; step <= steps; step++) {
    const t = step / steps;
    const t2 = t * t;
    const t3 = t2 * t;
    const fromStart = add(scale(start, 2 * t3 - 3 * t2 + 1), scale(leaving, (t3 - 2 * t2 + t) * span));
    const fromEnd = add(scale(end, 3 * t2 - 2 * t3), scale(arriving, (t3 - t2) * span));
    points.push(add(fromStart, fromEnd));
  }
  return curveThrough(points);
}

export function curveThrough(points: readonly Vec3[]): Curve {
  const travelledMm = [0];
  for (let index = 1; index < points.length; index++) {
    const stepMm = length(subtract(points[index] as Vec3, points[index - 1] as Vec3));
    travelledMm.push((travelledMm[index - 1] as number) + stepMm);
  }
  return { points, travelledMm, lengthMm: travelledMm[travelledMm.length - 1] as number };
}

/** The point and direction after `mm` along the curve; straight on beyond its end. */
export function pointAlong(curve: Curve, mm: number): { point: Vec3; direction: Vec3 } {
  const last = curve.points.length - 1;
  let index = 1;
  while (index < last && (curve.travelledMm[index] as number) < mm) index++;
  const before = curve.points[index - 1] as Vec3;
  const direction = unit(subtract(curve.points[index] as Vec3, before));
  return { point: along(before, direction, mm - (curve.travelledMm[index - 1] as number)), direction };
}
