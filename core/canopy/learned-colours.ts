import { type LabPicture, labOfRaster } from '../raster/lab.ts';
import type { Mask, Raster } from '../raster/raster.ts';
import { colourCells, colourShares, shareRatios, smoothShares } from './colour-table.ts';
import type { Evidence } from './evidence.ts';
import { PARTS, type PartMap } from './found-plant.ts';
import { inLight, matchLight } from './match-light.ts';
import { windowAround } from './window.ts';

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
  /** Surroundings within this share of the canopy's longer side count in full, as pot and soil do everywhere. */
  nearShare: 0.25,
  /** What the rest of the photo counts. */
  farWeight: 0.3,
  /** Longer side to which a photo is thinned out before its colours are counted, px. */
  thinnedSidePx: 640,
  /** Share of one photo that a colour must have before it counts as met; the more photos, the less. */
  unseenShare: 0.003,
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
 *
 * Notes: pixels on the outline are mixtures and teach nothing.
 */
export function learnColours(
  before: LearnedColours | null,
  raster: Raster,
  canopy: Mask,
  options: { readonly parts?: PartMap } = {},
): LearnedColours | null {
  const lessons = lessonsOf(raster, canopy, options.parts ?? null);
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

/** What each pixel of the thinned photo teaches, and how strongly. */
interface Lessons {
  readonly picture: Raster;
  readonly canopy: Float32Array;
  readonly surroundings: Float32Array;
}

function lessonsOf(raster: Raster, canopy: Mask, parts: PartMap | null): Lessons {
  const every = Math.max(1, Math.ceil(Math.max(raster.width, raster.height) / LEARNING.thinnedSidePx));
  const [width, height] = [Math.floor(raster.width / every), Math.floor(raster.height / every)];
  const data = new Uint8Array(3 * width * height);
  const [inside, outside] = [new Float32Array(width * height), new Float32Array(width * height)];
  const isNear = nearCanopy(canopy);
  for (let i = 0; i < inside.length; i++) {
    const [x, y] = [every * (i % width), every * Math.floor(i / width)];
    const at = y * raster.width + x;
    data.set(raster.data.subarray(3 * at, 3 * at + 3), 3 * i);
    if (isOnOutline(canopy, x, y)) continue;
    const part = PARTS[parts?.data[at] ?? 0];
    if (canopy.data[at] === 1) inside[i] = 1;
    else outside[i] = isNear(x, y) || part === 'pot' || part === 'soil' ? 1 : LEARNING.farWeight;
  }
  return { picture: { width, height, data }, canopy: inside, surroundings: outside };
}

/** Whether a px lies in the canopy's bounding box with its margin. */
function nearCanopy(canopy: Mask): (x: number, y: number) => boolean {
  const box = windowAround(canopy);
  if (box === null) return () => false;
  const margin = LEARNING.nearShare * Math.max(box.width, box.height);
  return (x, y) =>
    x >= box.left - margin &&
    y >= box.top - margin &&
    x < box.left + box.width + margin &&
    y < box.top + box.height + margin;
}

/** Whether the mask changes from this px to one beside, above or below it. */
function isOnOutline({ width, height, data }: Mask, x: number, y: number): boolean {
  const at = y * width + x;
  const here = data[at];
  return (
    (x > 0 && data[at - 1] !== here) ||
    (x < width - 1 && data[at + 1] !== here) ||
    (y > 0 && data[at - width] !== here) ||
    (y < height - 1 && data[at + width] !== here)
  );
}
