import { median } from 'simple-statistics';
import { maskArea } from '../raster/raster.ts';
import { isCutOut } from './rim-places.ts';
import type { TakenView } from './taken-view.ts';

/** The ball of views that have none of their own, px of the photo. */
export interface UsualBall {
  readonly radiusPx: number;
  /** `area`: no view fixes a circle, so it is the circle as large as the canopy. */
  readonly from: 'other-views' | 'area';
}

/** The usual ball of a sitting's views; `null` when none was cut out. */
export function usualBall(views: readonly TakenView[]): UsualBall | null {
  const balls = views.flatMap(({ report }) => report.ball?.radiusPx ?? []);
  if (balls.length > 0) return { radiusPx: median(balls), from: 'other-views' };
  const equals = views
    .filter(isCutOut)
    .map(
      ({ canopy, report }) => (Math.sqrt(maskArea(canopy) / Math.PI) * (report.widthPx ?? 0)) / canopy.width,
    );
  return equals.length === 0 ? null : { radiusPx: median(equals), from: 'area' };
}
