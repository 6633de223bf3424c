import { rowExtents } from './silhouette-extents.ts';
import type { TurnedView } from './turned-view.ts';

/** How far a silhouette reaches to both sides of the axis in one band of heights, % of the ball's radius. */
export interface BandExtent {
  readonly left: number;
  readonly right: number;
}

/** Bands between the rim and the lowest of the views' tops: about as many as differ from each other on a bushy plant. */
export const BANDS = 10;
/** The band below the top ends this far up, share of the lowest top: above it rows are short and few. */
const UP_TO = 0.97;

/**
 * Each silhouette's mean extents in bands of equal height above the rim.
 *
 * @param views canopies with their place
 * @param ballRadiusPx one radius a view, px of that view
 * @returns one list of bands a view, lowest first; `null` where a band of a view is empty
 */
export function bandExtents(
  views: readonly TurnedView[],
  ballRadiusPx: readonly number[],
): (BandExtent | null)[][] {
  const rowsOf = views.map(({ canopy }) => rowExtents(canopy));
  const tops = rowsOf.map((rows, k) => {
    const top = rows.findIndex((row) => row !== null);
    return ((views[k] as TurnedView).rimYPx - top) / (ballRadiusPx[k] as number);
  });
  const upTo = UP_TO * Math.min(...tops);
  return views.map(({ axisXPx, rimYPx }, k) => {
    const radius = ballRadiusPx[k] as number;
    const rowAt = (share: number) => Math.round(rimYPx - share * upTo * radius);
    return Array.from({ length: BANDS }, (_, band) => {
      let [left, right, count] = [0, 0, 0];
      for (let y = Math.max(0, rowAt((band + 1) / BANDS)); y < rowAt(band / BANDS); y++) {
        const row = (rowsOf[k] as ReturnType<typeof rowExtents>)[y];
        if (row === null || row === undefined) continue;
        left += axisXPx - row[0];
        right += row[1] - axisXPx;
        count++;
      }
      const percent = 100 / radius / count;
      return count === 0 ? null : { left: left * percent, right: right * percent };
    });
  });
}
