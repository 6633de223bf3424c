import type { LabPicture } from '../raster/lab.ts';
import type { Mask } from '../raster/raster.ts';
import type { Lessons } from './colour-contrast.ts';
import type { Evidence } from './evidence.ts';
import type { PixelShares } from './model/pixel-shares.ts';
import type { PotShape } from './pot-shape.ts';

/** ΔE across two pixels that makes a full side edge. */
const FULL_EDGE_DELTA = 10;
/** Local ΔE per pixel at which a surface is as rough as leaves usually are. */
export const LEAF_ROUGHNESS = 6;

/** What a pixel of surely nothing but backdrop counts against. */
const BACKDROP_COST = 0.5;
/** What a pixel counts that differs from the backdrop only faintly, as a white pot does before white. */
const FAINT_WORTH = 0.3;

/** What speaks for and against a pot's body, all of one size. */
export interface BodySources {
  readonly object: Evidence;
  /** Positive for leaf and flower, by colour alone and by this photo's own canopy and foot. */
  readonly plant: Evidence;
  /** Mean change of colour from pixel to pixel nearby, ΔE. */
  readonly roughness: Float32Array;
  /** 1 where a pixel differs from the backdrop at all, too little to say what it is: a white pot before white. */
  readonly faint: Float32Array;
}

/**
 * What each pixel says about a pot's body, about -1 to 1: backdrop and leaf against, smooth neutral colours and the
 * colours met at the foot for.
 */
export function potBody({ object, plant, roughness, faint }: BodySources): Float32Array {
  const body = new Float32Array(object.logOdds.length);
  for (let i = 0; i < body.length; i++) {
    const stands = Math.max(-1, Math.min(1, (object.logOdds[i] as number) / 2.5));
    if (stands <= 0) {
      const hint = faint[i] as number;
      body[i] = BACKDROP_COST * stands * (1 - hint) + FAINT_WORTH * hint;
      continue;
    }
    const leafy = Math.max(-1, Math.min(1, (plant.logOdds[i] as number) / 2));
    const rough = Math.min(1, (roughness[i] as number) / LEAF_ROUGHNESS);
    body[i] = stands * Math.max(-1, Math.min(1, 0.5 - 0.9 * leafy - 0.6 * rough));
  }
  return body;
}

/** Log odds from which something on the pot's body is a leaf hanging over the rim: when rough, and when smooth. */
const ROUGH_LEAF_ODDS = 1;
const SMOOTH_LEAF_ODDS = 2.5;

/**
 * Whether something on a pot's body is a leaf hanging over the rim. A pot is smooth, so what shares a green pot's
 * colour must be rough to count as leaf.
 */
export function isHangingLeaf(odds: number, roughness: number): boolean {
  return odds > (roughness > 0.4 * LEAF_ROUGHNESS ? ROUGH_LEAF_ODDS : SMOOTH_LEAF_ODDS);
}

/**
 * What teaches this photo's colours before a pot is known: the object's upper third is canopy, its lowest tenth the
 * pot. Where leaves hang to the ground both teach the same colours and cancel out.
 */
export function firstLessons(object: Mask): Lessons {
  const { width, height, data } = object;
  const perRow = Array.from({ length: height }, (_, y) => {
    let count = 0;
    for (let x = 0; x < width; x++) count += data[y * width + x] as number;
    return count;
  });
  const top = perRow.findIndex((count) => count > 2);
  const bottom = perRow.findLastIndex((count) => count > 2);
  const lessons = new Uint8Array(data.length);
  if (top < 0) return lessons;
  const tall = bottom - top + 1;
  for (let i = 0; i < data.length; i++) {
    if (data[i] === 0) continue;
    const share = (Math.floor(i / width) - top) / tall;
    lessons[i] = share < 0.35 ? 1 : share > 0.9 && share < 0.985 ? 2 : 0;
  }
  return lessons;
}

/** What teaches once a pot was found: its body, and everything well above its rim. */
export function lessonsFromPot(object: Mask, pot: PotShape): Lessons {
  const { width, data } = object;
  const lessons = new Uint8Array(data.length);
  const aboveY = pot.topY - 0.35 * pot.topHalf;
  const belowY = pot.topY + 0.2 * (pot.bottomY - pot.topY);
  for (let i = 0; i < data.length; i++) {
    if (data[i] === 0) continue;
    const y = Math.floor(i / width);
    if (y < aboveY) lessons[i] = 1;
    else if (y > belowY && y < pot.bottomY && Math.abs((i % width) - pot.centreX) < 0.85 * pot.bottomHalf) {
      lessons[i] = 2;
    }
  }
  return lessons;
}

/** Share from which the network's word teaches a colour. */
const TEACHING_SHARE = 0.85;

/** What teaches where a network has had its say: what it is sure of. */
export function lessonsFromShares({ background, foliage, flower }: PixelShares): Lessons {
  const lessons = new Uint8Array(foliage.length);
  for (let i = 0; i < lessons.length; i++) {
    const plant = (foliage[i] as number) + (flower[i] as number);
    if (plant > TEACHING_SHARE) lessons[i] = 1;
    else if (1 - plant - (background[i] as number) > TEACHING_SHARE) lessons[i] = 2;
  }
  return lessons;
}

/** How strong an upright edge each pixel stands on, 0–1. */
export function sideEdges(picture: LabPicture): Float32Array {
  const { width, height } = picture;
  const side = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 1; x < width - 1; x++) {
      const i = y * width + x;
      side[i] = Math.min(1, stepDelta(picture, i - 1, i + 1) / FULL_EDGE_DELTA);
    }
  }
  return side;
}

/** Change of colour to the right-hand and lower neighbour, ΔE. */
export function colourSteps(picture: LabPicture): Float32Array {
  const { width, height } = picture;
  const steps = new Float32Array(width * height);
  for (let y = 0; y < height - 1; y++) {
    for (let x = 0; x < width - 1; x++) {
      const i = y * width + x;
      steps[i] = 0.5 * (stepDelta(picture, i, i + 1) + stepDelta(picture, i, i + width));
    }
  }
  return steps;
}

function stepDelta({ l, a, b }: LabPicture, one: number, other: number): number {
  const dl = (l[one] as number) - (l[other] as number);
  const da = (a[one] as number) - (a[other] as number);
  const db = (b[one] as number) - (b[other] as number);
  return Math.sqrt(dl * dl + da * da + db * db);
}
