import type { FilmFrame, FilmWindow } from '../../core/film/cast-film.ts';
import { drawOnStage } from '../../core/film/draw-on-stage.ts';
import { writeDay } from '../../core/film/write-day.ts';
import type { Raster } from '../../core/raster/raster.ts';
import { compressedPicture, rawFilm } from '../intake/sharp-door.ts';
import type { FilmFormat } from '../schemas/film.ts';
import type { StoredFilmPhoto } from './film-of-plant.ts';
import { filmSize } from './film-size.ts';

/** The last picture stands this long before the film begins anew. */
const END_MS = 1500;
/** Writing that takes longer is given up. */
const LONGEST_SECONDS = 180;

export interface FilmToWrite {
  readonly frames: readonly FilmFrame[];
  readonly window: FilmWindow;
  readonly format: FilmFormat;
  readonly perSecond: number;
  /** The upright JPEG of a photo. */
  readonly pictureOf: (sha256: string) => Promise<Uint8Array>;
  /** Hears how many pictures are drawn. */
  readonly onDrawn: (count: number) => void;
}

/**
 * Draws a film's pictures in line with each other and writes them as one that moves, for ever anew.
 *
 * Notes: it starts from bare pixels, so no camera data or place goes along. Each picture takes some 20 ms of this thread;
 * decoding and writing happen beside it.
 */
export async function writeFilm(film: FilmToWrite): Promise<Buffer> {
  const { frames, window, format, perSecond } = film;
  const { width, height } = filmSize(window, frames.length, format);
  const all = new Uint8Array(3 * width * height * frames.length);
  for (const [at, { photo, toStage }] of frames.entries()) {
    const { sha256, widthPx, heightPx, day } = photo as StoredFilmPhoto;
    const zoom = Math.hypot(toStage.a, toStage.b);
    const fineEnough = Math.ceil((widthPx * zoom * width) / window.width);
    const raster = await decoded(await film.pictureOf(sha256), Math.max(fineEnough, 16));
    const picture = {
      width,
      height,
      data: all.subarray(3 * width * height * at, 3 * width * height * (at + 1)),
    };
    drawOnStage(raster, { widthPx, heightPx }, toStage, window, picture);
    writeDay(picture, day);
    film.onDrawn(at + 1);
  }
  const delay = frames.map((_, at) => (at === frames.length - 1 ? END_MS : Math.round(1000 / perSecond)));
  const moving = rawFilm(all, { width, height, count: frames.length }).timeout({ seconds: LONGEST_SECONDS });
  const written =
    format === 'webp'
      ? moving.webp({ quality: 76, effort: 2, delay, loop: 0 })
      : moving.gif({ effort: 1, dither: 0.4, interFrameMaxError: 6, delay, loop: 0 });
  return written.toBuffer();
}

async function decoded(jpeg: Uint8Array, widthPx: number): Promise<Raster> {
  const { data, info } = await compressedPicture(jpeg)
    .resize({ width: widthPx, withoutEnlargement: true })
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { width: info.width, height: info.height, data };
}
