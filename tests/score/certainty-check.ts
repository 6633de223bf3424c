import type { CertaintyMap, FoundPlant } from '../../core/canopy/found-plant.ts';
import type { OpenCvDoor } from '../../core/opencv/door.ts';
import { depthInMask } from '../../core/opencv/masks.ts';
import { resizeMask } from '../../core/opencv/pictures.ts';
import { type Mask, maskArea } from '../../core/raster/raster.ts';

export const CERTAINTY_BINS = 5;
/** Pixels further from the canopy than this share of its radius are not asked: far away all are right. */
const NEAR_SHARE = 0.25;

/** Pixels by how certain they were said to be. */
export interface CertaintyCheck {
  readonly pixels: number[];
  /** Sum of the stated chances of being right, 0.5–1. */
  readonly stated: number[];
  readonly right: number[];
}

export function noPixels(): CertaintyCheck {
  const zeros = () => new Array<number>(CERTAINTY_BINS).fill(0);
  return { pixels: zeros(), stated: zeros(), right: zeros() };
}

/** Adds a photo: of each pixel in or near the wanted canopy, how certain it was said to be and whether it was right. */
export function notePixels(
  to: CertaintyCheck,
  door: OpenCvDoor,
  { certainty, canopy }: Pick<FoundPlant, 'canopy' | 'certainty'>,
  wanted: Mask,
): void {
  const [decided, right] = [resizeMask(door, canopy, certainty), resizeMask(door, wanted, certainty)];
  const nearPx = NEAR_SHARE * Math.sqrt(maskArea(right) / Math.PI);
  const offPx = depthInMask(door, { ...right, data: right.data.map((inside) => 1 - inside) });
  for (let i = 0; i < offPx.length; i++) {
    if ((offPx[i] as number) > nearPx) continue;
    const stated = statedChance(certainty, i);
    const bin = Math.min(CERTAINTY_BINS - 1, Math.floor((stated - 0.5) * 2 * CERTAINTY_BINS));
    to.pixels[bin] = (to.pixels[bin] as number) + 1;
    to.stated[bin] = (to.stated[bin] as number) + stated;
    if (decided.data[i] === right.data[i]) to.right[bin] = (to.right[bin] as number) + 1;
  }
}

/** Certainty 0 is a coin's toss and 255 certain. */
function statedChance({ data }: CertaintyMap, i: number): number {
  return 0.5 + (data[i] as number) / 510;
}

export interface CertaintyLine {
  readonly from: number;
  readonly to: number;
  /** Share of the pixels asked. */
  readonly share: number;
  /** Means over the bin's pixels; `null` without any. */
  readonly stated: number | null;
  readonly right: number | null;
}

export function certaintyLines({ pixels, stated, right }: CertaintyCheck): CertaintyLine[] {
  const all = pixels.reduce((sum, count) => sum + count, 0);
  return pixels.map((count, bin) => ({
    from: 0.5 + bin / (2 * CERTAINTY_BINS),
    to: 0.5 + (bin + 1) / (2 * CERTAINTY_BINS),
    share: all === 0 ? 0 : count / all,
    stated: count === 0 ? null : (stated[bin] as number) / count,
    right: count === 0 ? null : (right[bin] as number) / count,
  }));
}

/** Mean distance between stated and measured, weighted by pixels (expected calibration error). */
export function calibrationError(lines: readonly CertaintyLine[]): number {
  return lines.reduce((sum, { share, stated, right }) => {
    return stated === null || right === null ? sum : sum + share * Math.abs(stated - right);
  }, 0);
}
