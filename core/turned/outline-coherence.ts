import type { PointPx } from '../raster/raster.ts';
import type { Loop } from '../silhouette/outline.ts';
import { seenAt, sightLine, type ViewSight } from './sight-lines.ts';
import { depthAt, type SilhouetteField } from './silhouette-field.ts';
import type { TurnedView } from './turned-view.ts';

/** A silhouette under a supposition on how its view was taken. */
export interface SupposedView {
  readonly field: SilhouetteField;
  readonly sight: ViewSight;
  /** How much further right than its axis says the plant stands on this picture, plan's unit. */
  readonly aside: number;
  /** Places on the outline, right of the axis and above the rim plane, plan's unit. */
  readonly outline: readonly PointPx[];
}

/** Places on an outline looked at, evenly along it: more differ too little from their neighbours. */
const PLACES = 72;
/** How finely a sight line is searched, share of the reach. */
const FINEST = 0.012;

/**
 * Evenly spaced places on the outlines of one view, above the rim.
 *
 * @returns x right of the axis, y above the rim plane, plan's unit
 */
export function outlinePlaces(loops: readonly Loop[], view: TurnedView, unitPerPx: number): PointPx[] {
  const seen = loops.flat().filter(([, y]) => y < view.rimYPx);
  const every = Math.max(1, Math.floor(seen.length / PLACES));
  return seen
    .filter((_, k) => k % every === 0)
    .map(([x, y]) => [(x - view.axisXPx) * unitPerPx, (view.rimYPx - y) * unitPerPx]);
}

/**
 * How far each sight line along an outline misses the other silhouettes, plan's unit.
 *
 * @param views as supposed
 * @param reach how far from the axis canopy may be
 * @returns for each view the misses of its places: 0 where the others agree
 *
 * How: a sight line along an outline touches the plant somewhere, and there every other view must show plant. So the line is searched for
 * the place that lies deepest in the shallowest of the other silhouettes; if even that lies outside, it misses by so much. Depths change by no more than the way
 * along the line, so the search may leap.
 *
 * Reference: Hernández, Schmitt and Cipolla (2007), Silhouette coherence for camera calibration under circular motion, IEEE PAMI 29(2):343–349.
 */
export function outlineMisses(views: readonly SupposedView[], reach: number): number[][] {
  return views.map((view, own) =>
    view.outline.map(([x, y]) => {
      const line = sightLine(view.sight, x - view.aside, y);
      // Start and end where the line enters and leaves the neighbourhood of the axis.
      const [u, v] = line.towards;
      const middle = -(line.from[0] * u + line.from[1] * v) / (u * u + v * v);
      let deepest = Number.NEGATIVE_INFINITY;
      for (let way = middle - reach; way <= middle + reach && deepest < 0; ) {
        const point = [
          line.from[0] + way * line.towards[0],
          line.from[1] + way * line.towards[1],
          line.from[2] + way * line.towards[2],
        ] as const;
        let shallowest = Number.POSITIVE_INFINITY;
        for (let k = 0; k < views.length; k++) {
          if (k === own) continue;
          const other = views[k] as SupposedView;
          const seen = seenAt(other.sight, point);
          const depth = depthAt(other.field, seen.x + other.aside, seen.y) / seen.zoom;
          if (depth < shallowest) shallowest = depth;
        }
        if (shallowest > deepest) deepest = shallowest;
        way += deepest - shallowest + FINEST * reach;
      }
      return Math.max(0, -deepest);
    }),
  );
}
