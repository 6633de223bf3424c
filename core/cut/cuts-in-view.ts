import type { PointPx } from '../raster/raster.ts';
import { seenRadius } from '../stems/placed-tip.ts';
import { seenAt, type ViewSight } from '../turned/sight-lines.ts';
import type { PlantPoint, TurnedView } from '../turned/turned-view.ts';
import type { SeenCut } from './cut-away.ts';

/** A cut placed on the plant. */
export interface PlacedCut {
  readonly id: string;
  readonly tipMm: PlantPoint;
  readonly cutMm: PlantPoint;
}

/** A cut as one view shows it, px of the view's mask. */
export interface CutInView extends SeenCut {
  readonly cutPx: PointPx;
}

/**
 * Where the cuts of a turned sitting show in one of its views.
 *
 * @param scene the view with how it sees the plant, in mm
 * @param cuts mm
 * @param centreMm the middle of the ball that they are cut to
 * @returns tip, cut mark and the outline of that ball, px of the view's mask
 */
export function cutsInView(
  { view, sight }: { readonly view: TurnedView; readonly sight: ViewSight },
  cuts: readonly PlacedCut[],
  centreMm: PlantPoint,
): CutInView[] {
  const placeOf = (point: PlantPoint): PointPx => {
    const { x, y } = seenAt(sight, point);
    return [view.axisXPx + x / sight.unitPerPx, view.rimYPx - y / sight.unitPerPx];
  };
  const centrePx = placeOf(centreMm);
  return cuts.map(({ id, tipMm, cutMm }) => {
    const radiusMm = Math.hypot(...cutMm.map((at, k) => at - (centreMm[k] as number)));
    return {
      id,
      tipPx: placeOf(tipMm),
      cutPx: placeOf(cutMm),
      ball: { centrePx, radiusPx: seenRadius(radiusMm, sight.camera?.distanceMm ?? null) / sight.unitPerPx },
    };
  });
}
