import { requireAtLeast } from '../errors/expect.ts';
import type { OpenCvDoor } from '../opencv/door.ts';
import { depthInMask } from '../opencv/masks.ts';
import { blurPlane, resizePlane } from '../opencv/pictures.ts';
import type { Mask } from '../raster/raster.ts';
import type { Evidence } from './evidence.ts';
import { layMask, placeThen, type RimEnds } from './lay-over.ts';

/** The plant's canopy at an earlier sitting, seen from the same place at the same turn. */
export interface LastOutline {
  /** Px of the raster it was cut from. */
  readonly canopy: Mask;
  /** The rim's ends then, by which the two photos are laid over one another; `null` when none was seen. */
  readonly pot: RimEnds | null;
  /** Days since, 0 or more. */
  readonly days: number;
}

/** How far the last outline is to be trusted. Lengths are shares of the canopy's radius, from `spreadOf`. */
export const LAST_OUTLINE = {
  /** Most log odds inside the last outline, less than outside: stems are cut off in one day, and grow in weeks. */
  mostInside: 1,
  mostOutside: 1.5,
  /** How far the outline moves outward in a week. */
  growthAWeek: 0.025,
  /** Depth over which the voice rises, inside, and outside, where it widens from week to week. */
  insideWidth: 0.15,
  outsideWidth: 0.12,
  outsideWidthAWeek: 0.04,
  /** Over how far what is seen today is averaged; from these mean log odds the inside speaks, from minus these not. */
  seenWidth: 0.15,
  seenOdds: 0.5,
  /** Days after which the voice is half as loud. */
  halfLifeDays: 28,
};

/**
 * The last outline as a soft opinion on "canopy or not" today.
 *
 * The canopy of then is laid over this photo by the rims, or as it stands when a rim is not known. Inside the voice
 * rises with depth, outside it falls with distance; it is even a little outside of the old outline, as plants grow. A
 * narrow stem is never deep, so whether it is still there is left to what is seen. And where all around is
 * seen to be no canopy today, the plant was cut back, and the inside has no voice.
 *
 * @param last the earlier canopy
 * @param size the size wanted, px
 * @param nowPot rim ends in this photo, px of `size`; `null` when not known
 * @param seen what the other voices say together, of `size`; without it the inside speaks wherever the canopy was
 * @returns log odds within -1.5 and 1; 0 where the photo of then did not reach, and everywhere when it shows no canopy
 *   or was of another shape and no rims tell how the two lie
 *
 * Errors: `RangeError` when `last.days` is negative.
 *
 * Notes: on the sample season the outline moved outward by 2–3 % of the radius a week; of what lay inside, nothing was
 * lost from week to week but by a deep stop, which took half of it. A leggy plant that doubles in a few days outgrows
 * the voice: there it speaks against new growth by up to 1.5.
 */
export function lastOutlineEvidence(
  door: OpenCvDoor,
  last: LastOutline,
  size: { readonly width: number; readonly height: number },
  nowPot: RimEnds | null,
  seen: Evidence | null = null,
): Evidence {
  requireAtLeast(last.days, 0, 'last.days');
  const { width, height } = size;
  const place = placeThen(last, size, nowPot);
  const laid = place === null ? null : layMask(last.canopy, size, place);
  const radiusPx = laid === null ? null : spreadOf(laid.canopy);
  if (laid === null || radiusPx === null) {
    return { width, height, logOdds: new Float32Array(width * height) };
  }
  const inside = depthInMask(door, laid.canopy);
  const outside = depthInMask(door, inverse(laid.canopy));
  const weeks = last.days / 7;
  const loudness = 0.5 ** (last.days / LAST_OUTLINE.halfLifeDays);
  const stillThere = seen === null ? null : support(door, seen, laid.canopy, radiusPx);
  const outsideWidth = LAST_OUTLINE.outsideWidth + LAST_OUTLINE.outsideWidthAWeek * weeks;
  const logOdds = inside.map((depthPx, i) => {
    if (laid.reached.data[i] === 0) return 0;
    const depth = (depthPx - (outside[i] as number)) / radiusPx + LAST_OUTLINE.growthAWeek * weeks;
    return (
      loudness *
      (depth > 0
        ? LAST_OUTLINE.mostInside * Math.tanh(depth / LAST_OUTLINE.insideWidth) * (stillThere?.[i] ?? 1)
        : LAST_OUTLINE.mostOutside * Math.tanh(depth / outsideWidth))
    );
  });
  return { width, height, logOdds: resizePlane(door, logOdds, laid.canopy, size) };
}

/** √2 times the root mean square distance from the mask's middle, px: a disc's radius; `null` for an empty mask. */
function spreadOf({ width, data }: Mask): number | null {
  let [area, sumX, sumY, squares] = [0, 0, 0, 0];
  for (let i = 0; i < data.length; i++) {
    if (data[i] === 0) continue;
    const [x, y] = [i % width, Math.floor(i / width)];
    area++;
    sumX += x;
    sumY += y;
    squares += x * x + y * y;
  }
  if (area === 0) return null;
  return Math.sqrt(2 * Math.max(0.5, squares / area - (sumX / area) ** 2 - (sumY / area) ** 2));
}

/** Whether what is seen around a px speaks for canopy: from 0, against it, to 1. */
function support(
  door: OpenCvDoor,
  seen: Evidence,
  size: { readonly width: number; readonly height: number },
  radiusPx: number,
): Float32Array {
  const most = 2 * LAST_OUTLINE.seenOdds;
  const heldIn = seen.logOdds.map((odds) => Math.max(-most, Math.min(most, odds)));
  const reduced = resizePlane(door, heldIn, seen, size);
  const mean = blurPlane(door, reduced, size, LAST_OUTLINE.seenWidth * radiusPx);
  return mean.map((odds) => Math.max(0, Math.min(1, 0.5 + odds / most)));
}

function inverse(mask: Mask): Mask {
  return { ...mask, data: mask.data.map((inside) => 1 - inside) };
}
