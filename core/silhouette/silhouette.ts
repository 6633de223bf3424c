import { polygonArea, polygonCentroid, polygonHull } from 'd3-polygon';
import { type Mask, maskArea, type PointPx } from '../raster/raster.ts';
import { fillHoles } from './fill-holes.ts';
import { type Loop, traceOutlines } from './outline.ts';
import { subPixelOutline } from './sub-pixel-outline.ts';

/** The canopy's mask with all that is read off its outline once. Px of the working raster. */
export interface Silhouette {
  readonly mask: Mask;
  /** The mask with its gaps filled. */
  readonly filled: Mask;
  /** Outlines of all pieces between the pixels, longest first, clockwise on screen. */
  readonly loops: readonly Loop[];
  /** Pixels of the canopy, gaps left out. */
  readonly areaPx: number;
  /** Pixels of the canopy with its gaps filled. */
  readonly filledAreaPx: number;
  /** Area of the convex hull of the pixels' corners. */
  readonly hullAreaPx: number;
  /** Middle of the hull: a centre to start from that long stems move little. */
  readonly hullMiddlePx: PointPx;
  /** Mean place of the canopy's pixels, gaps left out. */
  readonly centroidPx: PointPx;
  /** Left and top edge of the outermost pixels. */
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * Reads the silhouette off a canopy mask.
 *
 * @param mask canopy, px of the working raster
 * @returns areas, centroid, hull and outlines, px; `null` for a mask with no pixel inside
 *
 * Notes: everything counts whole pixels (their corners, not their centres), so area ÷ hull area is 1 for a
 * rectangle of any size.
 *
 * Example: an L of 80 × 80 less 40 × 40 has area 4800, hull 5600.
 */
export function readSilhouette(mask: Mask): Silhouette | null {
  const areaPx = maskArea(mask);
  if (areaPx === 0) return null;
  const filled = fillHoles(mask);
  const outlines = traceOutlines(filled);
  const corners = outlines.flat();
  const hull = polygonHull(corners.map(([x, y]): [number, number] => [x, y]));
  if (hull === null) return null;
  const xs = hull.map(([x]) => x);
  const ys = hull.map(([, y]) => y);
  return {
    mask,
    filled,
    loops: outlines.map(subPixelOutline),
    areaPx,
    filledAreaPx: maskArea(filled),
    hullAreaPx: Math.abs(polygonArea(hull)),
    hullMiddlePx: polygonCentroid(hull),
    centroidPx: maskCentroid(mask, areaPx),
    leftPx: Math.min(...xs),
    topPx: Math.min(...ys),
    widthPx: Math.max(...xs) - Math.min(...xs),
    heightPx: Math.max(...ys) - Math.min(...ys),
  };
}

function maskCentroid({ width, data }: Mask, areaPx: number): PointPx {
  let sumX = 0;
  let sumY = 0;
  for (let y = 0; y * width < data.length; y++) {
    const row = data.subarray(y * width, (y + 1) * width);
    for (let x = row.indexOf(1); x >= 0; x = row.indexOf(1, x)) {
      for (; x < width && row[x] === 1; x++) {
        sumX += x + 0.5;
        sumY += y + 0.5;
      }
    }
  }
  return [sumX / areaPx, sumY / areaPx];
}
