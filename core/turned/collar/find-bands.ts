import { type BandColumns, type BandPlace, bandLight, enlargements } from './band-columns.ts';
import { ROW_SHARE } from './collar-geometry.ts';
import type { PotSight } from './pot-sight.ts';

/** A place where two rows differ now this way, now that. */
export interface FoundBand {
  readonly place: BandPlace;
  /** Mean difference of the rarer way, 0 to 0.5. */
  readonly liveliness: number;
}

/** Where the band is looked for. */
export interface BandSearch {
  /** Rows of the middle line's front, px. */
  readonly fromYPx: number;
  readonly toYPx: number;
  readonly rises: readonly number[];
}

/** Steps of the search ÷ radius: a third of a row. */
const ROW_STEP = 0.045;
/** Columns looked at in the search: one a step and a half of the code at its narrowest. */
const SEARCH_COLUMNS = 60;
const MOST_BANDS = 3;

/** Below this there is no collar in sight. */
const LEAST_LIVELINESS = 0.08;

/**
 * Looks for the collar's two rows.
 *
 * @returns the liveliest places, liveliest first, no two of them alike; empty when nothing is lively
 *
 * Notes: in each step of the collar one row is dark and the other bare, so the rows differ strongly and both ways. Rims, shadows and
 * soil differ one way only, leaves little.
 */
export function findBands(columns: BandColumns, sight: PotSight, search: BandSearch): FoundBand[] {
  const every = Math.max(1, Math.floor(columns.xPx.length / SEARCH_COLUMNS));
  const nears = enlargements(columns, sight);
  const found: FoundBand[] = [];
  for (const rise of search.rises) {
    for (let y = search.fromYPx; y <= search.toYPx; y += ROW_STEP * sight.radiusPx) {
      const place: BandPlace = { frontYPx: y, rise, slant: 0, rowShare: 2 * ROW_SHARE };
      const liveliness = livelinessOf(bandLight(columns, sight, nears, place, every).contrast, every);
      if (liveliness >= LEAST_LIVELINESS) found.push({ place, liveliness });
    }
  }
  found.sort((one, other) => other.liveliness - one.liveliness);
  const kept: FoundBand[] = [];
  for (const band of found) {
    if (kept.length < MOST_BANDS && !kept.some((other) => alike(band, other, sight))) kept.push(band);
  }
  return kept;
}

function livelinessOf(contrast: Float32Array, every: number): number {
  let [up, down, count] = [0, 0, 0];
  for (let k = 0; k < contrast.length; k += every) {
    const here = contrast[k] as number;
    if (here > 0) up += here;
    else down -= here;
    count++;
  }
  return Math.min(up, down) / count;
}

function alike(one: FoundBand, other: FoundBand, { radiusPx }: PotSight): boolean {
  const apart = Math.abs(one.place.frontYPx - other.place.frontYPx) / radiusPx;
  return apart < ROW_SHARE && Math.abs(one.place.rise - other.place.rise) < 0.12;
}
