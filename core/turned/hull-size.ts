import { radOf, wholeTurn } from './circular-statistics.ts';
import type { HullGrid } from './hull-grid.ts';
import type { ViewSight } from './sight-lines.ts';

/**
 * Volume of the hull, cubic units.
 *
 * Notes: a cube near the surface counts by how deep its middle lies (half when on the surface), so a flat face of any slope adds no
 * bias. Known solids come out within 0.3 % at 100 cubes.
 */
export function hullVolume({ depths, side }: HullGrid): number {
  let cubes = 0;
  for (let k = 0; k < depths.length; k++) {
    const share = 0.5 + (depths[k] as number) / side;
    cubes += share <= 0 ? 0 : Math.min(share, 1);
  }
  return cubes * side ** 3;
}

/**
 * Sphericity: surface of the ball of the same volume ÷ surface of the body; 1 for a ball, below 1 for all else.
 *
 * Reference: Wadell (1935), Volume, shape, and roundness of quartz particles, J. Geology 43:250–280.
 *
 * Example: a cube has (π/6)^⅓ = 0.806.
 */
export function wadellSphericity(volume: number, area: number): number {
  return (Math.cbrt(Math.PI) * (6 * volume) ** (2 / 3)) / area;
}

/**
 * How many times too large the hull of an upright round body comes out, because silhouettes show nothing between their directions.
 *
 * @param sights the views
 * @param radius of the body, plan's unit; matters for a near camera only, where opposite views do not quite show the same outline
 * @returns ratio above 1; `null` when the views do not close round the plant
 *
 * How: every level slice of a round body turns into the polygon of the lines that touch it, with Σ tan(gap ÷ 2) ÷ π times its area, over the
 * gaps between neighbouring lines. For k evenly spread directions that is (2k ÷ π) tan(π ÷ 2k).
 *
 * Notes: an oval or lobed plant is enlarged by a little more (oval 1 : 0.8, four directions: 1.059–1.061 in place of 1.055).
 *
 * Example: k = 2, 3, 4, 6, 8 give 1.2732, 1.1027, 1.0548, 1.0235, 1.0131.
 */
export function hullBias(sights: readonly ViewSight[], radius: number): number | null {
  const azimuths = sights
    .flatMap(({ turnRad, camera }) => {
      const lean = camera === null ? 0 : Math.asin(Math.min(1, radius / camera.distanceMm));
      return [turnRad + Math.PI / 2 - lean, turnRad - Math.PI / 2 + lean];
    })
    .map((azimuth) => radOf(wholeTurn((azimuth * 180) / Math.PI)))
    .sort((a, b) => a - b);
  let sum = 0;
  for (let k = 0; k < azimuths.length; k++) {
    const next = azimuths[k + 1] ?? (azimuths[0] as number) + 2 * Math.PI;
    const gap = next - (azimuths[k] as number);
    if (gap >= Math.PI - 1e-9) return null;
    sum += Math.tan(gap / 2);
  }
  return sum / Math.PI;
}
