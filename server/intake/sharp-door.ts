import sharp, { type Sharp } from 'sharp';
import { MOST_PIXELS } from './most-pixels.ts';

/**
 * The one door to sharp. Only the three loaders that photos need stay open, so that no vector, document or
 * rare format ever reaches a parser, whatever a file is named.
 */
sharp.block({ operation: ['VipsForeignLoad'] });
sharp.unblock({
  operation: ['VipsForeignLoadJpegBuffer', 'VipsForeignLoadPngBuffer', 'VipsForeignLoadWebpBuffer'],
});
sharp.cache(false);

/** Of a film that we draw ourselves, all its pictures together. */
const MOST_FILM_PIXELS = 100_000_000;

/**
 * A compressed picture; sharp turns it upright by its EXIF orientation.
 *
 * @param failOn `error` stops at the first part that cannot be read, `warning` also at one that the decoder had to guess
 */
export function compressedPicture(bytes: Uint8Array, failOn: 'error' | 'warning' = 'error'): Sharp {
  return sharp(bytes, { failOn, limitInputPixels: MOST_PIXELS, autoOrient: true });
}

/** A picture in memory of 1 (grey), 2 (grey and alpha), 3 (RGB) or 4 (RGB and alpha) bytes a pixel. */
export function rawPicture(
  data: Uint8Array,
  shape: { readonly width: number; readonly height: number; readonly channels: 1 | 2 | 3 | 4 },
): Sharp {
  return sharp(data, { raw: shape, limitInputPixels: MOST_PIXELS });
}

/** Pictures of one size in memory, RGB, one below the other, to be written as one that moves. */
export function rawFilm(
  data: Uint8Array,
  { width, height, count }: { readonly width: number; readonly height: number; readonly count: number },
): Sharp {
  return sharp(data, {
    raw: { width, height: height * count, channels: 3, pageHeight: height },
    limitInputPixels: MOST_FILM_PIXELS,
  });
}
