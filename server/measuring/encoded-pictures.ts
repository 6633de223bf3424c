import type { MeasuredPhoto } from '../../core/measure-photo.ts';
import type { UprightPhoto } from '../../core/raster/raster.ts';
import { maskToClearPng, maskToPhotoPng, partsToPng, planeToPhotoPng } from '../intake/encode-picture.ts';

/** The pictures of one cut-out; each `null` when nothing was cut out or it was not asked for. */
export interface PicturesPng {
  readonly maskPng: Uint8Array | null;
  readonly partsPng: Uint8Array | null;
  /** 0 where "canopy or not" was a coin's toss, 255 where it is certain. */
  readonly certaintyPng: Uint8Array | null;
}

/** The pictures of a cut-out: for the `screen` at working size, or greys at the `photo`'s size. */
export async function encodedPictures(
  { canopy, found }: MeasuredPhoto,
  photo: UprightPhoto,
  wanted: 'screen' | 'photo' | 'none',
): Promise<PicturesPng> {
  if (canopy === null || wanted === 'none') return { maskPng: null, partsPng: null, certaintyPng: null };
  if (wanted === 'screen') {
    const [maskPng, partsPng] = await Promise.all([
      maskToClearPng(canopy),
      found === null ? null : partsToPng(found.parts),
    ]);
    return { maskPng, partsPng, certaintyPng: null };
  }
  const [maskPng, partsPng, certaintyPng] = await Promise.all([
    maskToPhotoPng(canopy, photo),
    found === null ? null : partsToPng(found.parts, photo),
    found === null ? null : planeToPhotoPng(found.certainty, photo),
  ]);
  return { maskPng, partsPng, certaintyPng };
}
