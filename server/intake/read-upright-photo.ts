import type { Raster, UprightPhoto } from '../../core/raster/raster.ts';
import { decodeHeic } from './heic.ts';
import { recogniseFormat } from './photo-format.ts';
import { compressedPicture, rawPicture } from './sharp-door.ts';

/** Longer side of the raster that is measured, px. */
export const WORKING_SIDE_PX = 1600;

/**
 * Decodes a photo, upright, as an sRGB raster of at most 1600 px on its longer side.
 *
 * JPEG is shrunk while it is unpacked; transparent parts become white. `widthPx` and `heightPx` are the
 * photo's full size after turning; `failOn` is that of `compressedPicture`. Rejects on a file that is broken or of another kind: ask
 * `checkPhoto` first where the file comes from outside.
 */
export async function readUprightPhoto(
  bytes: Uint8Array,
  failOn: 'error' | 'warning' = 'error',
): Promise<UprightPhoto> {
  const recognised = recogniseFormat(bytes);
  if (!recognised.known) throw new TypeError(`Expected a photo but received ${recognised.what}`);
  if (recognised.format === 'heic') {
    // libheif has already turned the pixels, though the file's EXIF still says turn.
    const { width, height, data } = await decodeHeic(bytes);
    const raster = await workingRaster(rawPicture(data, { width, height, channels: 4 }));
    return { raster, widthPx: width, heightPx: height };
  }
  const picture = compressedPicture(bytes, failOn);
  const { autoOrient } = await picture.metadata();
  return { raster: await workingRaster(picture), widthPx: autoOrient.width, heightPx: autoOrient.height };
}

async function workingRaster(picture: ReturnType<typeof rawPicture>): Promise<Raster> {
  const { data, info } = await picture
    .resize({ width: WORKING_SIDE_PX, height: WORKING_SIDE_PX, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: 'white' })
    .toColourspace('srgb')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true });
  if (info.channels !== 3) throw new TypeError(`Expected 3 bytes a pixel but received ${info.channels}`);
  const plain = new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
  return { width: info.width, height: info.height, data: plain };
}
