import type { PartMap } from '../../core/canopy/found-plant.ts';
import type { Mask, Raster } from '../../core/raster/raster.ts';
import { compressedPicture, rawPicture } from './sharp-door.ts';

/** Encodes an upright raster as JPEG. It starts from bare pixels, so no camera data or place goes along. */
export function rasterToJpeg(raster: Raster): Promise<Buffer> {
  return rawPicture(raster.data, { ...raster, channels: 3 })
    .jpeg({ quality: 86, mozjpeg: false })
    .toBuffer();
}

/** Reduces a JPEG to at most `widthPx` across; never enlarges, keeps no camera data. As WebP it weighs about a third less. */
export function narrowPicture(jpeg: Uint8Array, widthPx: number, format: 'jpeg' | 'webp'): Promise<Buffer> {
  return compressedPicture(jpeg)
    .resize({ width: widthPx, withoutEnlargement: true })
    .toFormat(format, { quality: format === 'webp' ? 78 : 82 })
    .toBuffer();
}

/** White where the mask is, clear elsewhere: a PNG to lay over the photo. */
export function maskToClearPng(mask: Mask): Promise<Buffer> {
  const greyAlpha = new Uint8Array(mask.data.length * 2).fill(255);
  for (let at = 0; at < mask.data.length; at++) greyAlpha[2 * at + 1] = 255 * (mask.data[at] as number);
  return rawPicture(greyAlpha, { width: mask.width, height: mask.height, channels: 2 })
    .png({ compressionLevel: 6 })
    .toBuffer();
}

/** Grey between one part and the next: 0 background, 51 leaf, 102 flower, 153 pot, 204 soil, 255 support. */
export const PART_GREY_STEP = 51;

/** The parts as an 8-bit grey PNG, of their own size or the photo's. */
export function partsToPng(
  parts: PartMap,
  photo?: { readonly widthPx: number; readonly heightPx: number },
): Promise<Buffer> {
  const data = parts.data.slice();
  for (let at = 0; at < data.length; at++) data[at] = PART_GREY_STEP * (data[at] as number);
  return greyPng({ ...parts, data }, photo, 'nearest');
}

/** A plane of grey at the photo's full size, as an 8-bit grey PNG. */
export function planeToPhotoPng(
  plane: { readonly width: number; readonly height: number; readonly data: Uint8Array },
  photo: { readonly widthPx: number; readonly heightPx: number },
): Promise<Buffer> {
  return greyPng(plane, photo, 'linear');
}

function greyPng(
  { width, height, data }: { readonly width: number; readonly height: number; readonly data: Uint8Array },
  photo: { readonly widthPx: number; readonly heightPx: number } | undefined,
  kernel: 'nearest' | 'linear',
): Promise<Buffer> {
  const picture = rawPicture(data, { width, height, channels: 1 });
  const sized = photo
    ? picture.resize({ width: photo.widthPx, height: photo.heightPx, fit: 'fill', kernel })
    : picture;
  return sized.toColourspace('b-w').png({ compressionLevel: 4 }).toBuffer();
}

/** The mask at the photo's full size, 0 outside and 255 inside, as an 8-bit grey PNG. */
export async function maskToPhotoPng(
  mask: Mask,
  photo: { readonly widthPx: number; readonly heightPx: number },
): Promise<Buffer> {
  const grey = mask.data.map((inside) => inside * 255);
  const { data, info } = await rawPicture(grey, { width: mask.width, height: mask.height, channels: 1 })
    .resize({ width: photo.widthPx, height: photo.heightPx, fit: 'fill', kernel: 'linear' })
    .threshold(128)
    .toColourspace('b-w')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return rawPicture(data, { width: info.width, height: info.height, channels: 1 })
    .toColourspace('b-w')
    .png({ compressionLevel: 6 })
    .toBuffer();
}
