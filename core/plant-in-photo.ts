import type { Evidence } from './canopy/evidence.ts';
import type { NoPlant } from './canopy/found-plant.ts';
import type { Gathered } from './canopy/gather-evidence.ts';
import type { PointPx } from './raster/raster.ts';
import type { PlantInPhoto } from './stand/read-stand.ts';

/** Where the plant is before any stroke was drawn, px of the raster: near enough to look past it. */
export function plantInPhoto(gathered: Gathered | NoPlant): PlantInPhoto {
  if (!gathered.ok) return { mask: null, canopyPx: null, rimPx: null, footPx: null };
  const { object, canopy, pot, potShape, raster, small } = gathered;
  const factor = raster.width / small.width;
  const middle = middleOf(canopy);
  return {
    mask: object,
    canopyPx: middle && [middle[0] * factor, middle[1] * factor],
    rimPx: pot && [pot.rim.centrePx[0], pot.rim.centrePx[1]],
    footPx: potShape && [potShape.centreX * factor, potShape.bottomY * factor],
  };
}

function middleOf({ width, logOdds }: Evidence): PointPx | null {
  let [sumX, sumY, count] = [0, 0, 0];
  for (let i = 0; i < logOdds.length; i++) {
    if (!((logOdds[i] as number) > 0)) continue;
    sumX += (i % width) + 0.5;
    sumY += Math.floor(i / width) + 0.5;
    count++;
  }
  return count === 0 ? null : [sumX / count, sumY / count];
}
