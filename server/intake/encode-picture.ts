import type { Mask, Raster } from '../../core/raster/raster.ts';
import { compressedPicture, rawPicture } from './sharp-door.ts';

/** Encodes an upright raster as JPEG. It starts from bare pixels, so no camera data or place goes along. */
export function rasterToJpeg(raster: Raster): Promise<Buffer> {
  return rawPicture(raster.data, { ...raster, channels: 3 })
    .jpeg({ quality: 86, mozjpeg: false })
    .toBuffer();
}

/** Reduces a JPEG to at most `widthPx` across; never enlarges, keeps no camera data. */
export function narrowJpeg(jpeg: Uint8Array, widthPx: number): Promise<Buffer> {
  return compressedPicture(jpeg)
    .resize({ width: widthPx, withoutEnlargement: true })
    .jpeg({ quality: 82 })
    .toBuffer();
}

/** White where the mask is, clear elsewhere: a PNG to lay over the photo. */
export function maskToClearPng(mask: Mask): Promise<Buffer> {
  const greyAlpha = new Uint8Array(mask.data.length * 2).fill(255);
  mask.data.forEach((inside, at) => {
    greyAlpha[2 * at + 1] = inside * 255;
  });
  return rawPicture(greyAlpha, { width: mask.width, height: mask.height, channels: 2 })
    .png({ compressionLevel: 6 })
    .toBuffer();
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
