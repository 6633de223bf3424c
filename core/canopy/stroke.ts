import type { PointPx } from '../raster/raster.ts';

/** A grower's stroke over the photo: what lies under it is canopy (`keep`) or is not (`remove`). */
export interface Stroke {
  readonly kind: 'keep' | 'remove';
  /** Width of the brush, px. */
  readonly widthPx: number;
  /** The line drawn; a single point is a dab. */
  readonly pointsPx: readonly PointPx[];
}

/** The stroke in a picture `across` times as wide and `down` times as high. */
export function scaleStroke(stroke: Stroke, across: number, down: number): Stroke {
  return {
    kind: stroke.kind,
    widthPx: (stroke.widthPx * (across + down)) / 2,
    pointsPx: stroke.pointsPx.map(([x, y]): PointPx => [x * across, y * down]),
  };
}
