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
  return { width: info.width, height: info.height, data: upperHalf(data) };
}

/** Longest side of a mask that views are joined from: more shows nothing more. */
const MASK_SIDE_PX = 1600;

/** The canopy back from a PNG of `maskToClearPng`, or from one of `maskToPhotoPng` at working size. */
export async function maskOfPng(png: Uint8Array): Promise<Mask> {
  const { hasAlpha } = await compressedPicture(png).metadata();
  if (hasAlpha) return maskOfClearPng(png);
  const { data, info } = await compressedPicture(png)
    .resize({ width: MASK_SIDE_PX, height: MASK_SIDE_PX, fit: 'inside', withoutEnlargement: true })
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, data: upperHalf(data) };
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

/** 1 where a byte is 128 or more. A loop: `Uint8Array.from` with a mapping takes fifty times as long on a photo's mask. */
function upperHalf(bytes: Uint8Array): Uint8Array {
  const inside = new Uint8Array(bytes.length);
  for (let at = 0; at < bytes.length; at++) inside[at] = (bytes[at] as number) >> 7;
  return inside;
}
