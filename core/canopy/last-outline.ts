import { requireAtLeast } from '../errors/expect.ts';
import type { OpenCvDoor } from '../opencv/door.ts';
import { depthInMask } from '../opencv/masks.ts';
import { blurPlane, resizePlane } from '../opencv/pictures.ts';
import { type Mask, maskArea, type PointPx } from '../raster/raster.ts';
import { rimWidthPx } from '../stand/axis.ts';
import type { Evidence } from './evidence.ts';
import type { Pot } from './found-plant.ts';

/** The plant's canopy at an earlier sitting, seen from the same place at the same turn. */
export interface LastOutline {
  /** Px of the raster it was cut from. */
  readonly canopy: Mask;
  /** The rim then, by which the two photos are laid over one another; `null` when none was seen. */
  readonly pot: Pot | null;
  /** Days since, 0 or more. */
  readonly days: number;
}

/** The rim's two ends. */
export type RimEnds = Pick<Pot, 'rimLeftPx' | 'rimRightPx'>;

/** How far the last outline is to be trusted. Lengths are shares of the canopy's radius, that of a disc of its area. */
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
  /** A rim that says that the camera went nearer or farther by more than this factor was misread. */
  mostZoom: 1.25,
};

/** Longer side of the copy on which the outline is laid over, px: it is soft, and need not be finer. */
const LAID_SIDE_PX = 200;

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
 * lost from week to week but by a deep stop, which took half of it.
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
  const place = laidOver(last, size, nowPot);
  const laid = place === null ? null : layMask(last.canopy, size, place);
  const area = laid === null ? 0 : maskArea(laid.canopy);
  if (laid === null || area === 0) return { width, height, logOdds: new Float32Array(width * height) };

  const radiusPx = Math.sqrt(area / Math.PI);
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

/** Where a point of this photo lay in the photo of then. */
type PlaceThen = (now: PointPx) => PointPx;

function laidOver(
  { canopy, pot }: LastOutline,
  size: { readonly width: number; readonly height: number },
  nowPot: RimEnds | null,
): PlaceThen | null {
  const across = canopy.width / size.width;
  const down = canopy.height / size.height;
  const asItStands: PlaceThen = ([x, y]) => [x * across, y * down];
  const isOneShape = Math.abs(across / down - 1) < 0.02;
  if (pot === null || nowPot === null) return isOneShape ? asItStands : null;
  const zoom = rimWidthPx(pot) / rimWidthPx(nowPot);
  const unlikely = Math.max(zoom / across, across / zoom);
  if (isOneShape && !(unlikely <= LAST_OUTLINE.mostZoom)) return asItStands;
  const [then, now] = [rimMiddle(pot), rimMiddle(nowPot)];
  return ([x, y]) => [then[0] + zoom * (x - now[0]), then[1] + zoom * (y - now[1])];
}

function rimMiddle({ rimLeftPx, rimRightPx }: RimEnds): PointPx {
  return [(rimLeftPx[0] + rimRightPx[0]) / 2, (rimLeftPx[1] + rimRightPx[1]) / 2];
}

/** The canopy of then where it would stand now, on a reduced copy, and what of this photo that photo showed. */
function layMask(
  canopy: Mask,
  size: { readonly width: number; readonly height: number },
  placeThen: PlaceThen,
): { canopy: Mask; reached: Mask } {
  const reduced = Math.min(1, LAID_SIDE_PX / Math.max(size.width, size.height));
  const width = Math.max(1, Math.round(size.width * reduced));
  const height = Math.max(1, Math.round(size.height * reduced));
  const laid = new Uint8Array(width * height);
  const reached = new Uint8Array(width * height);
  for (let i = 0; i < laid.length; i++) {
    const x = (((i % width) + 0.5) * size.width) / width;
    const y = ((Math.floor(i / width) + 0.5) * size.height) / height;
    const [thenX, thenY] = placeThen([x, y]).map(Math.floor) as [number, number];
    if (!(thenX >= 0 && thenY >= 0 && thenX < canopy.width && thenY < canopy.height)) continue;
    reached[i] = 1;
    laid[i] = canopy.data[thenY * canopy.width + thenX] as number;
  }
  return { canopy: { width, height, data: laid }, reached: { width, height, data: reached } };
}

function inverse(mask: Mask): Mask {
  return { ...mask, data: mask.data.map((inside) => 1 - inside) };
}
