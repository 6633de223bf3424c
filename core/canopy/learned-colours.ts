import { type LabPicture, labOfRaster } from '../raster/lab.ts';
import type { Mask, Raster } from '../raster/raster.ts';
import { colourLessons } from './colour-lessons.ts';
import { COLOUR_CELLS, colourCells, colourShares, shareRatios, smoothShares } from './colour-table.ts';
import type { Evidence } from './evidence.ts';
import type { PartMap } from './found-plant.ts';
import { inLight, matchLight } from './match-light.ts';

/**
 * How often each colour was met in a plant's accepted canopies and beside them, as shares in the cells of the colour
 * table, all in the light of the first accepted photo.
 */
export interface LearnedColours {
  /** Accepted silhouettes behind the shares. */
  readonly photos: number;
  /** Share of the canopies' pixels in each cell. */
  readonly canopy: Float32Array;
  /** Share of the surroundings' pixels in each cell, near ones counted more. */
  readonly surroundings: Float32Array;
}

export const LEARNING = {
  /** Accepted photos after which an old one counts half. */
  halfLifePhotos: 4,
  /** Share of one photo that a colour must have to count as met; with more photos less is needed. */
  unseenShare: 0.0015,
  /** The evidence is held within ±this. */
  mostLogOdds: 3,
};

/**
 * Adds one accepted silhouette to what is known of a plant's colours.
 *
 * @param before what was known; `null` when this is the first
 * @param raster the photo
 * @param canopy the accepted canopy, of the raster's size
 * @param options.parts the photo's parts, of the raster's size: pot and soil then teach as near surroundings
 * @returns the colours with this photo; an older one counts half after `LEARNING.halfLifePhotos` more. `before` itself
 *   when the silhouette has no canopy or no surroundings to learn from.
 */
export function learnColours(
  before: LearnedColours | null,
  raster: Raster,
  canopy: Mask,
  options: { readonly parts?: PartMap } = {},
): LearnedColours | null {
  const lessons = colourLessons(raster, canopy, options.parts ?? null);
  const seen = labOfRaster(lessons.picture);
  const picture = before === null ? seen : inLight(seen, matchLight(seen, densityOf(before)));
  const cells = colourCells(picture);
  const [inside, outside] = [colourShares(cells, lessons.canopy), colourShares(cells, lessons.surroundings)];
  if (!inside.some((share) => share > 0) || !outside.some((share) => share > 0)) return before;
  if (before === null) return { photos: 1, canopy: inside, surroundings: outside };
  const photos = before.photos + 1;
  const news = 1 / photosInEffect(photos);
  const blend = (old: Float32Array, fresh: Float32Array): Float32Array =>
    old.map((share, cell) => (1 - news) * share + news * (fresh[cell] as number));
  return {
    photos,
    canopy: blend(before.canopy, inside),
    surroundings: blend(before.surroundings, outside),
  };
}

/**
 * What a plant's own colours say on "canopy or not", pixel by pixel.
 *
 * The photo is first brought to the light in which the colours were learned. The voice is the log ratio of how often a
 * colour was met in the canopy and beside it, within ±`LEARNING.mostLogOdds`: 0 for a colour met in neither or in both
 * alike, and softer while few photos were accepted.
 *
 * Notes: knows nothing of place: another plant of the same colour speaks like this one.
 * Reference: ratio of two colour histograms as in Jones, Rehg, Statistical color models with application to skin
 * detection (2002), given from memory.
 */
export function learnedColourEvidence(picture: LabPicture, colours: LearnedColours): Evidence {
  const ratios = shareRatios(smoothShares(colours.canopy), smoothShares(colours.surroundings), {
    unseen: LEARNING.unseenShare / photosInEffect(colours.photos),
    most: LEARNING.mostLogOdds,
  });
  const cells = colourCells(inLight(picture, matchLight(picture, densityOf(colours))));
  const { width, height } = picture;
  return { width, height, logOdds: Float32Array.from(cells, (cell) => ratios[cell] as number) };
}

/** Photos that count when each fades: 1 + ½^(1/half-life) + …, a geometric series. */
function photosInEffect(photos: number): number {
  const fade = 0.5 ** (1 / LEARNING.halfLifePhotos);
  return (1 - fade ** photos) / (1 - fade);
}

/** How often a colour was met at all, canopy and surroundings alike. */
function densityOf({ canopy, surroundings }: LearnedColours): Float32Array {
  return smoothShares(canopy.map((share, cell) => (share + (surroundings[cell] as number)) / 2));
}

const RECORD = { version: 1, headBytes: 8, shareBytes: 2, most: 65_535 };
const RECORD_BYTES = RECORD.headBytes + 2 * COLOUR_CELLS * RECORD.shareBytes;

/** The colours as bytes for the store (36 kB): version, photos, then the square root of each share in 16 bits. */
export function encodeColours({ photos, canopy, surroundings }: LearnedColours): Uint8Array {
  const bytes = new Uint8Array(RECORD_BYTES);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, RECORD.version, true);
  view.setUint32(4, photos, true);
  [...canopy, ...surroundings].forEach((share, k) => {
    view.setUint16(
      RECORD.headBytes + k * RECORD.shareBytes,
      Math.round(RECORD.most * Math.sqrt(share)),
      true,
    );
  });
  return bytes;
}

/** The colours from their bytes; `null` when they are of another version or length: then learn anew. */
export function decodeColours(bytes: Uint8Array): LearnedColours | null {
  if (bytes.length !== RECORD_BYTES) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const photos = view.getUint32(4, true);
  if (view.getUint32(0, true) !== RECORD.version || photos === 0) return null;
  const shares = Float32Array.from({ length: 2 * COLOUR_CELLS }, (_, k) => {
    return (view.getUint16(RECORD.headBytes + k * RECORD.shareBytes, true) / RECORD.most) ** 2;
  });
  return { photos, canopy: shares.slice(0, COLOUR_CELLS), surroundings: shares.slice(COLOUR_CELLS) };
}
