import type { LabColour } from '../colour/colour-difference.ts';
import type { PointPx } from '../raster/raster.ts';

/** A share of the leaf, 0–1. */
export interface LeafShare {
  readonly share: number;
  /** 95 % repeatability: what another photo of the same leaf, judged by the same normal, would change. */
  readonly plusMinus: number;
  /** How far the true share may lie from it, 95 %: what every photo of the plant reads wrong alike is in it too. */
  readonly offBy: number;
}

/** How much of a plant's leaf is green, yellow and brown in one photo. Px of the raster it was read from. */
export interface Foliage {
  readonly ok: true;
  /** Of the leaf that could be judged; the three add up to 1. */
  readonly green: LeafShare;
  readonly yellow: LeafShare;
  readonly brown: LeafShare;
  /** Why shares are held against no other photo's: white is not known, or not from where the plant's normal is. `null` when they are. */
  readonly notCompared: string | null;
  /** What counts as green: the plant's own first sittings, or what is usual for green-leaved plants. */
  readonly against: 'own' | 'usual';
  /** Where yellow stands together, the largest first. */
  readonly where: readonly YellowZone[];
  /** Middle colour of the leaf, balanced. */
  readonly leafColour: LabColour;
  /** CIEDE2000 between it and the plant's normal leaf; `null` without one, or when not comparable. */
  readonly departure: number | null;
}

/** A place where yellow leaf stands together. */
export interface YellowZone {
  /** Where it is on the plant as seen: "low on the left". */
  readonly place: string;
  readonly centrePx: PointPx;
  /** Its share of the leaf, 0–1. */
  readonly areaShare: number;
  /** Closed outline. */
  readonly outlinePx: readonly PointPx[];
}

/** Leaf whose colour cannot be told, and a plain sentence on why and what to do. */
export interface NoFoliage {
  readonly ok: false;
  readonly reason: 'too-little' | 'by-nature';
  readonly why: string;
}
