import type { OpenCvDoor } from '../opencv/door.ts';
import { blurPlane } from '../opencv/pictures.ts';
import type { LabPicture } from '../raster/lab.ts';
import type { Mask } from '../raster/raster.ts';

/** L* that a usable photo reaches in this share of its pixels. */
const LEAST_LIGHT_L = 20;
const LEAST_LIGHT_SHARE = 0.0005;
/** L* that the middle of a usable canopy reaches, and where its middle is, as a share of its px from dark to light. */
const LEAST_CANOPY_L = 8;
const MIDDLE_OF_CANOPY = 0.6;

/** Whether nothing in the photo is light enough; a near-black backdrop alone is no fault. */
export function isTooDark(picture: LabPicture, canopy: Mask | null): boolean {
  let light = 0;
  for (let i = 0; i < picture.l.length; i++) if ((picture.l[i] as number) >= LEAST_LIGHT_L) light++;
  if (light < LEAST_LIGHT_SHARE * picture.l.length) return true;
  if (canopy === null) return false;
  let [leaves, dark] = [0, 0];
  for (let i = 0; i < picture.l.length; i++) {
    if (canopy.data[i] !== 1) continue;
    leaves++;
    if ((picture.l[i] as number) < LEAST_CANOPY_L) dark++;
  }
  // The middle is dark when all up to it in order of lightness are.
  return leaves > 0 && dark > Math.floor(MIDDLE_OF_CANOPY * leaves);
}

/** Half the side of the square in which an edge's whole step is looked for, px. */
const STEP_REACH_PX = 8;
/** L* step below which an edge tells nothing about sharpness. */
const LEAST_STEP_L = 12;

/**
 * How wide the sharpest tenth of a picture's clear edges are, px: step height divided by steepest slope, on L*.
 *
 * Because the slope is divided by the step, a bland photo that is sharp reads as sharp. `null` when the region has no
 * clear edge: then sharpness is not known.
 *
 * @param region where to look, the plant and a margin
 */
export function edgeWidthPx(door: OpenCvDoor, picture: LabPicture, region: Mask): number | null {
  const { width, height } = picture;
  // A little smoothing keeps noise from passing for a steep edge.
  const l = blurPlane(door, picture.l, picture, 0.7);
  const slope = new Float32Array(l.length);
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const i = y * width + x;
      const across = (l[i + 1] as number) - (l[i - 1] as number);
      const down = (l[i + width] as number) - (l[i - width] as number);
      slope[i] = 0.5 * Math.sqrt(across * across + down * down);
    }
  }
  const widths: number[] = [];
  for (let i = 0; i < l.length; i++) {
    if (region.data[i] !== 1 || !isCrest(slope, picture, i)) continue;
    const step = stepAround(l, picture, i);
    if (step > LEAST_STEP_L) widths.push(step / (slope[i] as number));
  }
  return widths.length < 20 ? null : percentile(Float32Array.from(widths), 0.1);
}

/** How far around nothing may be steeper, px. */
const CREST_REACH_PX = 2;

function isCrest(slope: Float32Array, { width, height }: LabPicture, at: number): boolean {
  const steepness = slope[at] as number;
  if (!(steepness > 0)) return false;
  const row = Math.floor(at / width);
  const column = at % width;
  const left = Math.max(0, column - CREST_REACH_PX);
  const right = Math.min(width - 1, column + CREST_REACH_PX);
  const bottom = Math.min(height - 1, row + CREST_REACH_PX);
  for (let y = Math.max(0, row - CREST_REACH_PX); y <= bottom; y++) {
    for (let i = y * width + left; i <= y * width + right; i++) {
      if ((slope[i] as number) > steepness) return false;
    }
  }
  return true;
}

/** Lightest less darkest within the reach of a step. */
function stepAround(l: Float32Array, { width, height }: LabPicture, at: number): number {
  const row = Math.floor(at / width);
  const column = at % width;
  const from = Math.max(0, column - STEP_REACH_PX);
  const until = Math.min(width, column + STEP_REACH_PX + 1);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let y = Math.max(0, row - STEP_REACH_PX); y <= Math.min(height - 1, row + STEP_REACH_PX); y++) {
    for (let i = y * width + from; i < y * width + until; i++) {
      const value = l[i] as number;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  return high - low;
}

function percentile(values: Float32Array, share: number): number {
  const sorted = values.slice().sort();
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}
