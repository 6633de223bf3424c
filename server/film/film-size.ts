import type { FilmWindow } from '../../core/film/cast-film.ts';
import type { FilmFormat } from '../schemas/film.ts';

/**
 * Bounds of a film's file. Longest side of a picture, and px of all pictures together: what is held in memory (three bytes each)
 * and how long writing takes hang on the latter. GIF packs badly and slowly, so it gets less.
 */
const BOUNDS: Readonly<Record<FilmFormat, { longestPx: number; allPx: number }>> = {
  webp: { longestPx: 720, allPx: 30_000_000 },
  gif: { longestPx: 480, allPx: 9_000_000 },
};
/** More pictures than this are thinned out evenly. */
export const MOST_PICTURES = 120;

/** Size of the pictures of a film with `count` of them, px. */
export function filmSize(
  window: FilmWindow,
  count: number,
  format: FilmFormat,
): { width: number; height: number } {
  const { longestPx, allPx } = BOUNDS[format];
  const byLength = longestPx / Math.max(window.width, window.height);
  const byAll = Math.sqrt(allPx / (count * window.width * window.height));
  const scale = Math.min(byLength, byAll, 1);
  const even = (px: number) => Math.max(2, 2 * Math.floor((px * scale) / 2));
  return { width: even(window.width), height: even(window.height) };
}

/** At most `most` of the items, evenly spread, the first and the last among them. */
export function thinned<Item>(items: readonly Item[], most: number): readonly Item[] {
  if (items.length <= most) return items;
  return Array.from(
    { length: most },
    (_, k) => items[Math.round((k * (items.length - 1)) / (most - 1))] as Item,
  );
}
