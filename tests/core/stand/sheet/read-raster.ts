import sharp from 'sharp';
import type { Raster } from '../../../../core/raster/raster.ts';

/** A picture file as core takes it, upright and at most 1600 px on its longer side. */
export async function readRaster(file: string): Promise<Raster> {
  const { data, info } = await sharp(file)
    .rotate()
    .resize(1600, 1600, { fit: 'inside', withoutEnlargement: true })
    .removeAlpha()
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, data };
}
