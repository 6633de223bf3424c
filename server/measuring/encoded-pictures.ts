import type { FoundPlant } from '../../core/canopy/found-plant.ts';
import type { UprightPhoto } from '../../core/raster/raster.ts';
import { maskToClearPng, maskToPhotoPng, partsToPng, planeToPhotoPng } from '../intake/encode-picture.ts';

/** The pictures of one cut-out; each `null` when nothing was cut out or it was not asked for. */
export interface PicturesPng {
  readonly maskPng: Uint8Array | null;
  readonly partsPng: Uint8Array | null;
  /** 0 where "canopy or not" was a coin's toss, 255 where it is certain. */
  readonly certaintyPng: Uint8Array | null;
}

export const NO_PICTURES: PicturesPng = { maskPng: null, partsPng: null, certaintyPng: null };

/** The pictures of a cut-out: for the `screen` at working size, or greys at the `photo`'s size. */
export async function encodedPictures(
  found: FoundPlant | null,
  photo: UprightPhoto,
  wanted: 'screen' | 'photo' | 'none',
): Promise<PicturesPng> {
  if (found === null || wanted === 'none') return NO_PICTURES;
  const { canopy, parts, certainty } = found;
  if (wanted === 'screen') {
    const [maskPng, partsPng] = await Promise.all([maskToClearPng(canopy), partsToPng(parts)]);
    return { ...NO_PICTURES, maskPng, partsPng };
  }
  const [maskPng, partsPng, certaintyPng] = await Promise.all([
    maskToPhotoPng(canopy, photo),
    partsToPng(parts, photo),
    planeToPhotoPng(certainty, photo),
  ]);
  return { maskPng, partsPng, certaintyPng };
}
