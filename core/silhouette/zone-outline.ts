import type { ZoneMask } from '../canopy/found-plant.ts';
import type { PointPx } from '../raster/raster.ts';
import { fillHoles } from './fill-holes.ts';
import { edgeMiddles, traceOutlines } from './outline.ts';
import { reduceOutline } from './reduce-outline.ts';

/** Points of a zone's outline: it is hatched and tapped, not measured. */
const MOST_POINTS = 80;

/**
 * The outer contour of a zone.
 *
 * @param zone a mask of a window of the raster
 * @returns closed contour of at most 80 points, px of the raster, clockwise on screen; `[]` for an empty zone
 *
 * Notes: of a zone in several pieces the longest contour; gaps inside are left out.
 *
 * Example: a zone of one pixel at (3, 2) is a diamond about (3.5, 2.5).
 */
export function zoneOutline(zone: ZoneMask): readonly PointPx[] {
  const [longest] = traceOutlines(fillHoles(zone));
  if (longest === undefined) return [];
  return reduceOutline(edgeMiddles(longest), MOST_POINTS).map(
    ([x, y]): PointPx => [x + zone.left, y + zone.top],
  );
}
