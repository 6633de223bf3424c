import type { OpenCvDoor } from '../opencv/door.ts';
import { blurPlane, highestNearby, lowestNearby } from '../opencv/pictures.ts';
import type { LabPicture } from '../raster/lab.ts';
import type { Mask } from '../raster/raster.ts';

/** L* that a usable photo reaches in this share of its pixels. */
const LEAST_LIGHT_L = 20;
const LEAST_LIGHT_SHARE = 0.0005;
/** L* that the middle of a usable canopy reaches. */
const LEAST_CANOPY_L = 8;

/** Whether nothing in the photo is light enough; a near-black backdrop alone is no fault. */
export function isTooDark(picture: LabPicture, canopy: Mask | null): boolean {
  const light = picture.l.reduce((count, value) => count + (value >= LEAST_LIGHT_L ? 1 : 0), 0);
  if (light < LEAST_LIGHT_SHARE * picture.l.length) return true;
  if (canopy === null) return false;
  const leaves = picture.l.filter((_, i) => canopy.data[i] === 1);
  return leaves.length > 0 && percentile(leaves, 0.6) < LEAST_CANOPY_L;
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
      slope[i] = 0.5 * Math.hypot(across, down);
    }
  }
  const steepest = highestNearby(door, slope, picture, 2);
  const high = highestNearby(door, l, picture, STEP_REACH_PX);
  const low = lowestNearby(door, l, picture, STEP_REACH_PX);
  const widths: number[] = [];
  for (let i = 0; i < l.length; i++) {
    const step = (high[i] as number) - (low[i] as number);
    const isCrest = (slope[i] as number) > 0 && slope[i] === steepest[i];
    if (region.data[i] === 1 && isCrest && step > LEAST_STEP_L) widths.push(step / (slope[i] as number));
  }
  return widths.length < 20 ? null : percentile(Float32Array.from(widths), 0.1);
}

function percentile(values: Float32Array, share: number): number {
  const sorted = values.slice().sort();
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
}
