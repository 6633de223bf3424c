/// <reference path="./polylabel.d.ts" />
import { polygonArea } from 'd3-polygon';
import polylabel from 'polylabel';
import { requireAtLeast, requirePositive } from '../errors/expect.ts';
import type { PointPx } from '../raster/raster.ts';
import type { Circle } from './circle.ts';

/** A ring of points, closed without repeating the first. */
export type Ring = readonly PointPx[];

/**
 * Largest circle that lies inside an outline.
 *
 * @param rings the outline first, then its holes if they are to be kept clear; three points or more each, any unit
 * @param precision the radius is at most this much below the largest there is, same unit
 * @returns centre and radius in the points' unit
 *
 * Notes: differs from the maximum inscribed circle of ISO 12181-1 (`maximumInscribedCircle`), which asks only that no point
 * of a profile lies inside: an outline's edges count here.
 *
 * Reference: library polylabel (quadtree search of Garcia-Castellanos and Lombardo, 2007, Poles of inaccessibility).
 *
 * Example: the triangle (1, 1), (1, 7), (9, 1) holds a circle of radius 2 about (3, 3).
 */
export function largestInnerCircle(rings: readonly Ring[], precision: number): Circle {
  requirePositive(precision, 'precision');
  for (const ring of rings) requireAtLeast(ring.length, 3, 'ring.length');
  const found = polylabel(
    rings.map((ring) => [...ring, ring[0] as PointPx]),
    precision,
  );
  return { centre: [found[0], found[1]], radius: found.distance };
}

/** The ring that holds the most. */
export function largestRing(rings: readonly Ring[]): { ring: Ring; area: number } | null {
  let largest: { ring: Ring; area: number } | null = null;
  for (const ring of rings) {
    const area = areaInside(ring);
    if (largest === null || area > largest.area) largest = { ring, area };
  }
  return largest;
}

/** Area inside a ring, whichever way it runs. */
export function areaInside(ring: Ring): number {
  return Math.abs(polygonArea(ring.map(([x, y]): [number, number] => [x, y])));
}
