import type { Flower } from './bloom/flower-in-report.ts';
import type { Foliage } from './foliage/foliage.ts';
import type { Extras } from './measures/extras.ts';
import type { PointPx } from './raster/raster.ts';
import type { Standing } from './stand/frame/frame-fit.ts';
import type { Gaps } from './vigour/gaps.ts';
import type { PhotoStature } from './vigour/stature-in-report.ts';

/**
 * The report of one photo: what the command line prints, the HTTP interface serves and the tests read.
 *
 * Px are px of the photo as stored upright. What cannot be known is `null`, with the reason in `notes`;
 * never 0, NaN or an empty guess. When `status` is not `measured`, every measure is `null` (or an empty
 * list) and `hint` says what to do.
 */
export interface PhotoReport {
  readonly photo: string;
  /** `null` only when the photo could not be read. */
  readonly widthPx: number | null;
  readonly heightPx: number | null;
  /** Azimuth that faces the camera, degrees; `null` when not told. */
  readonly turnDeg: number | null;
  /** What the pot's turn collar says of the turn; `null` without one, or when it cannot be read for sure. */
  readonly collar: CollarTurn | null;
  readonly status: PhotoStatus;
  /** What the grower should do; present exactly when `status` is not `measured`. */
  readonly hint: string | null;
  /** How the camera stands against the stand's reference picture; `null` without one, or when it cannot be told. */
  readonly frame: Frame | null;
  /**
   * Why its scores are compared with no other photo's and enter no trend: the camera stands too far from where it stood, or
   * the photo shows another place. `null` when nothing speaks against it.
   */
  readonly notCompared: string | null;
  readonly scale: Scale | null;
  readonly axis: Axis | null;
  readonly canopy: Canopy | null;
  readonly ball: Ball | null;
  readonly roundness: Score | null;
  readonly symmetry: Score | null;
  readonly lopsidedness: Lopsidedness | null;
  /** Other ways to say how round and how upright; `null` when not measured. */
  readonly extras: Extras | null;
  readonly longStems: readonly LongStem[];
  /** Green, yellow and brown leaf; `null` when it cannot be told, then `notes` say why. */
  readonly foliage: FoliageShares | null;
  /** Share in flower with its plus-minus, and the patches that heads are counted by; `null` when not measured. */
  readonly flower: Flower | null;
  /** Where light falls through; `null` without a ball. */
  readonly gaps: Gaps | null;
  /** Height, spread, mean height, area above the rim and reach about it, by which a limp plant is told; `null` without a pot. */
  readonly stature: PhotoStature | null;
  /** Overlap (intersection over union) with the true canopy that is to be expected, 0–1. */
  readonly confidence: number | null;
  /** Zones that may lie on the other side of the outline, the one that matters most first. */
  readonly unsure: readonly Unsure[];
  readonly maskFile: string | null;
  readonly notes: readonly string[];
}

/** The measuring part of a report that measured nothing. */
export const NO_MEASURES = {
  collar: null,
  frame: null,
  notCompared: null,
  scale: null,
  axis: null,
  canopy: null,
  ball: null,
  roundness: null,
  symmetry: null,
  lopsidedness: null,
  extras: null,
  longStems: [],
  foliage: null,
  flower: null,
  gaps: null,
  stature: null,
  confidence: null,
  unsure: [],
  maskFile: null,
} as const;

export const PHOTO_STATUSES = [
  'measured',
  'no-canopy',
  'touches-edge',
  'two-plants',
  'too-dark',
  'blurred',
  'unreadable',
] as const;
export type PhotoStatus = (typeof PHOTO_STATUSES)[number];

/** How the photo lies over the stand's reference picture. */
export interface Frame {
  /** Told by the stand sheet's ring marks, or by what is seen of the stand itself. */
  readonly from: 'marks' | 'features';
  /** Where what lay in the middle of the reference lies in this photo, from there: right, down. */
  readonly shiftPx: PointPx;
  /** The same at the plant's distance; `null` without a scale. */
  readonly shiftMm: PointPx | null;
  /** How far the picture is turned, degrees, clockwise positive. */
  readonly turnDeg: number;
  /** How large the stand reads, as a factor of the reference. */
  readonly zoom: number;
  readonly standing: Standing;
  /** Plain sentence on where the camera stands. */
  readonly words: string;
}

/** The turn as read from the printed collar. */
export interface CollarTurn {
  /** Azimuth that faces the camera, 0 up to 360°. */
  readonly turnDeg: number;
  /** 95 % of readings lie within it; how straight the collar was put to the mark is not in it. */
  readonly plusMinusDeg: number;
  /** Steps of its code that were read. */
  readonly marks: number;
}

/** Millimetres a photo px at the plant's axis, at the height of the canopy's middle. */
export interface Scale {
  readonly mmPerPx: number;
  readonly from: 'rim' | 'sheet';
}

/** The vertical through the middle of the pot rim, and the rim's two ends as seen. */
export interface Axis {
  readonly xPx: number;
  readonly rimLeftPx: PointPx;
  readonly rimRightPx: PointPx;
  /** The rim as a level ellipse; `null` when leaves hide how far it opens to the view. */
  readonly rimEllipse: RimEllipse | null;
}

export interface RimEllipse {
  readonly centrePx: PointPx;
  readonly halfWidthPx: number;
  readonly halfHeightPx: number;
}

export interface Canopy {
  readonly areaPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly widthMm: number | null;
  readonly heightMm: number | null;
  /** Area ÷ hull area, 0–1. */
  readonly solidity: number;
  /** Holes ÷ filled area, 0–1. */
  readonly gapFraction: number;
  /** Flower ÷ canopy, above 0 and at most 1; `null` when no flower was told from leaf. */
  readonly flowerShare: number | null;
}

export interface Ball {
  readonly centrePx: PointPx;
  readonly radiusPx: number;
  readonly radiusMm: number | null;
  /** 95 % repeatability of the radius; in mm the doubt of the rim is in it. */
  readonly radiusPlusMinusPx: number;
  readonly radiusPlusMinusMm: number | null;
  /** Outermost minus innermost of the form profile about the minimum-zone centre. */
  readonly outOfRoundPx: number;
  readonly outOfRoundMm: number | null;
  /** Degrees of the circle not hidden by the pot. */
  readonly openArcDeg: number;
}

/** A score 0–100 with its 95 % repeatability. */
export interface Score {
  readonly score: number;
  readonly plusMinus: number;
}

export interface Lopsidedness {
  /** Per cent of the ball radius, right positive. */
  readonly percent: number;
  readonly plusMinus: number;
  readonly side: 'left' | 'right' | 'even';
}

export interface LongStem {
  readonly tipPx: PointPx;
  readonly cutPx: PointPx;
  readonly excessPx: number;
  readonly excessMm: number | null;
  /** Hour in the photo about the ball's centre, 1–12, 12 on top, 3 at the right. */
  readonly clock: number;
  readonly kind: 'shoot' | 'shoulder';
}

/** Shares of the leaf, and where yellow stands, px of the photo as stored upright. */
export type FoliageShares = Omit<Foliage, 'ok'>;

/** A zone that may or may not be canopy. */
export interface Unsure {
  /** Closed contour. */
  readonly outlinePx: readonly PointPx[];
  /** Whether it was counted as canopy. */
  readonly inCanopy: boolean;
  /** Chance that it is canopy, 0–1. */
  readonly chance: number;
  readonly areaPx: number;
}
