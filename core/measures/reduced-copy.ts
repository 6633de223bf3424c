import type { ZoneMask } from '../canopy/found-plant.ts';
import type { Mask, PointPx } from '../raster/raster.ts';

/** A small copy of a part of the raster. */
export interface ReducedCopy {
  readonly mask: Mask;
  /** Place of the copy's top-left corner in the raster, px. */
  readonly origin: PointPx;
  /** Raster px a px of the copy. */
  readonly pxPerPx: number;
}

/** A rectangle of the raster, px, between pixels if need be. */
export interface Extent {
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * A reduced copy of the canopy within an extent.
 *
 * @param canopy px of the raster
 * @param extent what the copy must hold, px of the raster; it may reach over the raster's edge
 * @param pxPerPx raster px a px of the copy, at least 1
 *
 * Notes: each pixel asks the one its middle falls on, so a copy's edge is good to half a px of its own; compare copies
 * with copies only.
 */
export function reducedCopy(canopy: Mask, extent: Extent, pxPerPx: number): ReducedCopy {
  const origin: PointPx = [extent.leftPx, extent.topPx];
  const width = Math.ceil(extent.widthPx / pxPerPx);
  const height = Math.ceil(extent.heightPx / pxPerPx);
  return {
    mask: sampled({ ...canopy, left: 0, top: 0 }, { origin, pxPerPx, width, height }),
    origin,
    pxPerPx,
  };
}

/** A zone as it lies on a reduced copy. */
export function zoneOnCopy(zone: ZoneMask, { mask: { width, height }, origin, pxPerPx }: ReducedCopy): Mask {
  return sampled(zone, { origin, pxPerPx, width, height });
}

function sampled(
  from: ZoneMask,
  to: { origin: PointPx; pxPerPx: number; width: number; height: number },
): Mask {
  const { width, height } = to;
  const placeOf = (k: number, start: number) => Math.floor(start + (k + 0.5) * to.pxPerPx);
  const columns = Int32Array.from({ length: width }, (_, k) => placeOf(k, to.origin[0] - from.left));
  const data = new Uint8Array(width * height);
  for (let row = 0; row < height; row++) {
    const y = placeOf(row, to.origin[1] - from.top);
    if (y < 0 || y >= from.height) continue;
    for (let column = 0; column < width; column++) {
      const x = columns[column] as number;
      if (x >= 0 && x < from.width) data[row * width + column] = from.data[y * from.width + x] as number;
    }
  }
  return { width, height, data };
}
