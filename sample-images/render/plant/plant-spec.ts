import type { Keyframes } from '../geometry/keyframes.ts';
import type { Vec3 } from '../geometry/vector.ts';

/** How leaves of a plant look. Sizes in mm, colours as linear reflectance. */
export interface LeafLook {
  /** Radius of a full-grown blade, leaf joint to tip. */
  readonly radiusMm: number;
  /** How deep the lobes are cut, as a share of the radius. */
  readonly lobing: number;
  /** How deep the teeth on the margin are, as a share of the radius. */
  readonly toothing: number;
  /** How much the blade ripples, as a share of the radius. */
  readonly ruffle: number;
  /** Strength of the dark ring on the blade, 0 to 1. */
  readonly zone: number;
  readonly colour: Vec3;
  readonly youngColour: Vec3;
}

export interface FlowerLook {
  /** Length of a petal. */
  readonly petalMm: number;
  readonly floretsPerTruss: number;
  /** How much a petal ripples, as a share of its length. */
  readonly ruffle: number;
  /** Length of an open flower's own stalk beyond a bud's, in petal lengths. */
  readonly pedicel: number;
  readonly colour: Vec3;
  /** Colour of the dark mark on the upper petals. */
  readonly blotch: Vec3;
  /** Share of shoots that carry a truss. */
  readonly share: number;
  /** 0 before buds show, 1 first buds coloured, 2 full bloom. */
  readonly stage: Keyframes;
}

/** A shoot that outgrows the ball. */
export interface LongShoot {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
  /** How far its tip stands beyond where the others end, mm, by week. */
  readonly excessMm: Keyframes;
}

/** A stem taken further back: everything above the last fork goes in that week. */
export interface DeepStop {
  readonly week: number;
  /** Weeks until the breaks start to grow. */
  readonly restWeeks: number;
  /** Canopy radius of the new growth, mm, by week. */
  readonly radiusMm: Keyframes;
}

/** A plant of known geometry at any week of its season. Lengths in mm, weeks from the season's first sitting. */
export interface PlantSpec {
  readonly seed: number;
  /** Radius of the canopy by week. */
  readonly radiusMm: Keyframes;
  /** Height of the ball's centre above the rim, as a share of the radius. */
  readonly centreHeight: number;
  /** Lowest direction that shoots grow to, degrees above level (negative: below). */
  readonly lowestDeg: number;
  readonly shoots: number;
  readonly forks: number;
  readonly internodeMm: number;
  readonly leaf: LeafLook;
  readonly flower: FlowerLook | null;
  /** How far the top leans, mm, by week, and to which azimuth. */
  readonly leanMm: Keyframes;
  readonly leanAzimuthDeg: number;
  readonly longShoots: readonly LongShoot[];
  readonly deepStop: DeepStop | null;
  /** Stems only: every leaf has fallen or was taken off; left out, the plant is in leaf. */
  readonly bare?: boolean;
}

/** A stem shortened from its tip. */
export interface Cut {
  readonly shoot: number;
  readonly shortenMm: number;
}
