import type { OpenCvDoor } from '../opencv/door.ts';
import { resizeMask, resizePlane } from '../opencv/pictures.ts';
import type { Mask } from '../raster/raster.ts';
import { PARTS, type PartMap } from './found-plant.ts';
import type { Gathered } from './gather-evidence.ts';

/** What every pixel of the raster is. */
export function partMap(door: OpenCvDoor, { raster, object, shares }: Gathered, canopy: Mask): PartMap {
  const { width, height } = raster;
  const stands = resizeMask(door, object, raster);
  const flower = shares === null ? null : resizePlane(door, shares.flower, shares, raster);
  const data = new Uint8Array(width * height);
  for (let i = 0; i < data.length; i++) {
    if (canopy.data[i] === 1) {
      data[i] = PARTS.indexOf((flower?.[i] ?? 0) > 0.5 ? 'flower' : 'leaf');
    } else if (stands.data[i] === 1) data[i] = PARTS.indexOf('pot');
  }
  return { width, height, data };
}
