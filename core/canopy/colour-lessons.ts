import type { Mask, Raster } from '../raster/raster.ts';
import { PARTS, type PartMap } from './found-plant.ts';
import { windowAround } from './window.ts';

const LESSONS = {
  /** Surroundings within this share of the canopy's longer side count in full, as pot and soil do everywhere. */
  nearShare: 0.25,
  /** What the rest of the photo counts. */
  farWeight: 0.3,
  /** Longer side to which a photo is thinned out, px. */
  thinnedSidePx: 640,
};

/** What each pixel of the thinned photo teaches, and how strongly. */
export interface ColourLessons {
  readonly picture: Raster;
  readonly canopy: Float32Array;
  readonly surroundings: Float32Array;
}

/**
 * Parts an accepted photo into canopy and surroundings, thinned out.
 *
 * Pixels on the outline are mixtures and teach nothing. The surroundings count in full near the canopy, where the
 * outline is decided, and on pot and soil, and less in the rest of the photo.
 */
export function colourLessons(raster: Raster, canopy: Mask, parts: PartMap | null): ColourLessons {
  const every = Math.max(1, Math.ceil(Math.max(raster.width, raster.height) / LESSONS.thinnedSidePx));
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
    else outside[i] = isNear(x, y) || part === 'pot' || part === 'soil' ? 1 : LESSONS.farWeight;
  }
  return { picture: { width, height, data }, canopy: inside, surroundings: outside };
}

/** Whether a px lies in the canopy's bounding box with its margin. */
function nearCanopy(canopy: Mask): (x: number, y: number) => boolean {
  const box = windowAround(canopy);
  if (box === null) return () => false;
  const margin = LESSONS.nearShare * Math.max(box.width, box.height);
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
