import type { Pot } from '../../core/canopy/found-plant.ts';
import type { Scene } from './scene.ts';

export interface RimErrors {
  /** Larger distance of the two rim ends from the truth, share of the true rim width. */
  readonly ends: number;
  /** The sideways part of it. */
  readonly sideways: number;
  /** Found rim width ÷ true rim width - 1. */
  readonly scale: number;
}

/** How far off the found rim is; `null` without a pot, or where no truth tells. */
export function rimErrors({ pair, rasterPxPerPhotoPx }: Scene, pot: Pot | null): RimErrors | null {
  const axis = pair.truth?.axis;
  if (!axis || pot === null) return null;
  const wanted = ([x, y]: readonly [number, number]) =>
    [x * rasterPxPerPhotoPx, y * rasterPxPerPhotoPx] as const;
  const [left, right] = [wanted(axis.rimLeftPx), wanted(axis.rimRightPx)];
  const wantedWidth = Math.abs(right[0] - left[0]);
  const off = (seen: readonly [number, number], there: readonly [number, number]) =>
    Math.hypot(seen[0] - there[0], seen[1] - there[1]) / wantedWidth;
  const sidewaysOff = Math.max(Math.abs(pot.rimLeftPx[0] - left[0]), Math.abs(pot.rimRightPx[0] - right[0]));
  return {
    sideways: sidewaysOff / wantedWidth,
    ends: Math.max(off(pot.rimLeftPx, left), off(pot.rimRightPx, right)),
    scale: (pot.rimRightPx[0] - pot.rimLeftPx[0]) / wantedWidth - 1,
  };
}
