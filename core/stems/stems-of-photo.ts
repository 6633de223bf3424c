import type { BallFit } from '../measures/ball.ts';
import type { RimEnds } from '../silhouette/open-arc.ts';
import type { Silhouette } from '../silhouette/silhouette.ts';
import { bareLongStems } from './bare-photo.ts';
import { type LongStemPx, longStems } from './long-stems.ts';

/** Long stems of one photo with what cannot be seen of them. */
export interface StemsOfPhoto {
  readonly stems: readonly LongStemPx[];
  readonly notes: readonly string[];
}

/** A silhouette that fills more of its hull than this is no fan of bare stems. */
const MOST_SOLID = 0.45;

/**
 * Long stems of one photo, bare or in leaf.
 *
 * @param silhouette px
 * @param pot the rim's ends and the plant axis, px; `null` without a pot
 * @param ball the silhouette's ball, px
 * @param edgeUncertaintyPx one standard deviation of the outline's place
 */
export function stemsOfPhoto(
  silhouette: Silhouette,
  pot: { readonly rim: RimEnds; readonly axis: { readonly xPx: number; readonly rimYPx: number } } | null,
  ball: BallFit,
  edgeUncertaintyPx: number,
): StemsOfPhoto {
  if (silhouette.areaPx < MOST_SOLID * silhouette.hullAreaPx) {
    const start = { centre: ball.centrePx, radius: ball.radiusPx };
    const bare = bareLongStems(silhouette.mask, pot?.axis ?? null, start);
    if (bare !== null) return bare;
  }
  return {
    stems: longStems({ loops: silhouette.loops, rim: pot?.rim ?? null }, ball, edgeUncertaintyPx),
    notes: [],
  };
}
