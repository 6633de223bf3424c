import { freePlace, isFree, type Plate } from './free-place.ts';
import { clampInto, labelSize, plateCovers } from './label-size.ts';
import type { Box, Point } from './points.ts';

/** A marked place of the plant that wants a name beside it. */
export interface ZoneToName {
  readonly words: string;
  readonly centrePx: Point;
  /** Half its width and height. */
  readonly reachPx: Point;
}

/**
 * Places a label beside each zone, the first zones first: at its right, left, top or foot, inside the window and over no plate that is
 * taken. `null` where there is no such place: the zone is then told by a tap only.
 */
export function placeZoneLabels(
  zones: readonly ZoneToName[],
  taken: readonly Plate[],
  crop: Box,
  unitPx: number,
): (Plate | null)[] {
  const all = [...taken];
  return zones.map(({ words, centrePx: [x, y], reachPx: [across, down] }) => {
    const size = labelSize(words, unitPx);
    const [dx, dy] = [across + size.width / 2 + GAP_PX * unitPx, down + size.height / 2 + GAP_PX * unitPx];
    const starts: Point[] = [
      [x + dx, y],
      [x - dx, y],
      [x, y - dy],
      [x, y + dy],
    ];
    for (const start of starts) {
      const at = freePlace({ at: clampInto(crop, start, size), size }, all);
      const [heldX, heldY] = clampInto(crop, at, size);
      const isInside = heldX === at[0] && heldY === at[1];
      if (!isInside || plateCovers(at, size, [[x, y]]) || !isFree({ at, size }, all)) continue;
      all.push({ at, size });
      return { at, size };
    }
    return null;
  });
}

/** Between a zone's edge and its label, px of the screen. */
const GAP_PX = 14;
