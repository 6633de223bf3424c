import type { PointPx } from '../../raster/raster.ts';
import type { RingKind } from './ring-kinds.ts';

/** One edge between dark and light, as fitted in the photo. */
export interface RingEdge {
  /** Which edge, in ring units from the centre. */
  readonly units: number;
  /** Centre of the ellipse that the edge makes in the photo; see `RingMark.centrePx` for why edges differ. */
  readonly centrePx: PointPx;
  /** One standard deviation of either coordinate. */
  readonly doubtPx: number;
}

/** A ring mark seen in a photo, before it is known which mark of the sheet it is. Px of the raster. */
export interface RingMark {
  readonly kind: RingKind;
  /**
   * Where the mark's middle lies. A tilted circle's picture is an ellipse whose centre is not the picture of the circle's
   * centre; the difference grows with the radius squared, so concentric rings show it and it is taken out.
   */
  readonly centrePx: PointPx;
  /** Outer radius along the ellipse's longer axis: what the mark would show if it faced the camera. */
  readonly radiusPx: number;
  /** The ellipse of the outer edge: half axes and the direction of the longer one, degrees clockwise from the right. */
  readonly halfAxesPx: readonly [longer: number, shorter: number];
  readonly axisTurnDeg: number;
  /** One standard deviation of either coordinate of `centrePx`. */
  readonly doubtPx: number;
  readonly edges: readonly RingEdge[];
}

/** A mark of the stand sheet: the same place on paper has the same id in every photo. */
export interface SheetMark extends RingMark {
  readonly id: MarkId;
}

/** Named by where they stand when the arrow points up. */
export const MARK_IDS = ['top-left', 'top-right', 'right', 'bottom-left', 'bottom-right'] as const;
export type MarkId = (typeof MARK_IDS)[number];
