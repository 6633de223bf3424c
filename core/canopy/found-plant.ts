import type { Mask, PointPx } from '../raster/raster.ts';
import type { PhotoStatus } from '../report.ts';

/** What was cut out of a photo, in px of the raster it was cut from. */
export interface FoundPlant {
  readonly ok: true;
  /** Leaf, flower and stem; never pot, soil, label or support. Holes are kept. */
  readonly canopy: Mask;
  /** `null` when no pot is seen: then there is no axis and no scale. */
  readonly pot: Pot | null;
  /** One standard deviation of the outline's place, px: how far the edge may be off. */
  readonly edgeUncertaintyPx: number;
  /** Sentences for the report's `notes`. */
  readonly notes: readonly string[];
}

/** The outer ends of the pot's rim as seen, left and right. */
export interface Pot {
  readonly rimLeftPx: PointPx;
  readonly rimRightPx: PointPx;
}

/** The photo was read but no canopy can be measured on it; `hint` says what the grower should do. */
export interface NoPlant {
  readonly ok: false;
  readonly reason: Exclude<PhotoStatus, 'measured' | 'unreadable'>;
  readonly hint: string;
}
