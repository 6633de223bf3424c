import type { Mask, PointPx } from '../raster/raster.ts';
import type { PhotoStatus } from '../report.ts';

/** What a pixel of the photo is. Support is a cane, a tie or a label. */
export const PARTS = ['background', 'leaf', 'flower', 'pot', 'soil', 'support'] as const;
export type Part = (typeof PARTS)[number];

/** The part at every pixel, as an index into `PARTS`. Leaf (with stem) and flower together are the canopy. */
export interface PartMap {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** What was cut out of a photo, in px of the raster it was cut from. */
export interface FoundPlant {
  readonly ok: true;
  /** Leaf, flower and stem; never pot, soil, label or support. Holes are kept. */
  readonly canopy: Mask;
  readonly parts: PartMap;
  /** `null` when no pot is seen: then there is no axis and no scale. */
  readonly pot: Pot | null;
  readonly certainty: CertaintyMap;
  /** Zones that may belong to the other side, the one that matters most first. */
  readonly unsureZones: readonly UnsureZone[];
  /** The overlap (intersection over union) with the true canopy that is to be expected, 0–1. */
  readonly confidence: number;
  /** One standard deviation of the outline's place, px: how far the edge may be off. */
  readonly edgeUncertaintyPx: number;
  /** Sentences for the report's `notes`. */
  readonly notes: readonly string[];
}

/** How sure "canopy or not" is at every pixel of a reduced copy: 0 a coin's toss, 255 certain. */
export interface CertaintyMap {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/** A connected zone that may as well lie on the other side of the outline. */
export interface UnsureZone {
  /** The zone's pixels, px of the raster. */
  readonly mask: ZoneMask;
  /** Whether it was counted as canopy. */
  readonly inCanopy: boolean;
  /** Chance that it is canopy, 0–1. */
  readonly chance: number;
  readonly areaPx: number;
}

/** A mask of a window of the raster. */
export interface ZoneMask extends Mask {
  readonly left: number;
  readonly top: number;
}

/** The outer ends of the pot's rim as seen, left and right, and the rim's ellipse. */
export interface Pot {
  readonly rimLeftPx: PointPx;
  readonly rimRightPx: PointPx;
  readonly rim: RimEllipse;
  /** One standard deviation of the rim's width, px: small where both ends show, larger where leaves hide them. */
  readonly rimDoubtPx: number;
  /** Half-width that the sides lose for each px downward from the rim: a rim whose row is misread reads wide or narrow by it. */
  readonly rimTaper: number;
}

/** The rim as a level ellipse. */
export interface RimEllipse {
  readonly centrePx: PointPx;
  readonly halfWidthPx: number;
  /** 0 when the camera stands at the rim's height. */
  readonly halfHeightPx: number;
  /** Whether the half-height was seen, by the soil or the back of the rim; else it is what is usual for such a view. */
  readonly heightSeen: boolean;
}

/**
 * The photo was read but no canopy can be measured on it; `hint` says what the grower should do. What was cut out all
 * the same can be shown and mended: a stroke may show that the refusal was wrong.
 */
export interface NoPlant {
  readonly ok: false;
  readonly reason: Exclude<PhotoStatus, 'measured' | 'unreadable'>;
  readonly hint: string;
  readonly cutOut: FoundPlant | null;
}
