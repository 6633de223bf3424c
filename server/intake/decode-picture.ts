import { PARTS, type PartMap } from '../../core/canopy/found-plant.ts';
import type { Mask } from '../../core/raster/raster.ts';
import { PART_GREY_STEP } from './encode-picture.ts';
import { compressedPicture } from './sharp-door.ts';

/** The mask back from the PNG that `maskToClearPng` made. */
export async function maskOfClearPng(png: Uint8Array): Promise<Mask> {
  const { data, info } = await compressedPicture(png)
    .extractChannel('alpha')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, data: Uint8Array.from(data, (alpha) => alpha >> 7) };
}

/** The parts back from the PNG that `partsToPng` made. */
export async function partsOfPng(png: Uint8Array): Promise<PartMap> {
  const { data, info } = await compressedPicture(png)
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  const parts = Uint8Array.from(data, (grey) =>
    Math.min(PARTS.length - 1, Math.round(grey / PART_GREY_STEP)),
  );
  return { width: info.width, height: info.height, data: parts };
}
