import type { Mask, PointPx } from '../raster/raster.ts';
import { rimWidthPx } from '../stand/axis.ts';
import type { Pot } from './found-plant.ts';

/** The rim's two ends. */
export type RimEnds = Pick<Pot, 'rimLeftPx' | 'rimRightPx'>;

/** A rim that says that the camera went nearer or farther by more than this factor was misread. */
const MOST_ZOOM = 1.25;
/** Longer side of the copy on which a canopy is laid over another photo, px: good to half a px of its own. */
const LAID_SIDE_PX = 200;

/** Where a point of this photo lay in the photo of then. */
export type PlaceThen = (now: PointPx) => PointPx;

/** How the two photos lie over one another: by the rims, else as they stand; `null` when neither can be right. */
export function placeThen(
  { canopy, pot }: { readonly canopy: Mask; readonly pot: RimEnds | null },
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
  if (!(unlikely <= MOST_ZOOM)) return isOneShape ? asItStands : null;
  const [then, now] = [rimMiddle(pot), rimMiddle(nowPot)];
  return ([x, y]) => [then[0] + zoom * (x - now[0]), then[1] + zoom * (y - now[1])];
}

function rimMiddle({ rimLeftPx, rimRightPx }: RimEnds): PointPx {
  return [(rimLeftPx[0] + rimRightPx[0]) / 2, (rimLeftPx[1] + rimRightPx[1]) / 2];
}

/** The canopy of then where it would stand now, on a reduced copy, and what of this photo that photo showed. */
export function layMask(
  canopy: Mask,
  size: { readonly width: number; readonly height: number },
  place: PlaceThen,
): { canopy: Mask; reached: Mask } {
  const reduced = Math.min(1, LAID_SIDE_PX / Math.max(size.width, size.height));
  const width = Math.max(1, Math.round(size.width * reduced));
  const height = Math.max(1, Math.round(size.height * reduced));
  const laid = new Uint8Array(width * height);
  const reached = new Uint8Array(width * height);
  for (let i = 0; i < laid.length; i++) {
    const x = (((i % width) + 0.5) * size.width) / width;
    const y = ((Math.floor(i / width) + 0.5) * size.height) / height;
    const [thenX, thenY] = place([x, y]).map(Math.floor) as [number, number];
    if (!(thenX >= 0 && thenY >= 0 && thenX < canopy.width && thenY < canopy.height)) continue;
    reached[i] = 1;
    laid[i] = canopy.data[thenY * canopy.width + thenX] as number;
  }
  return { canopy: { width, height, data: laid }, reached: { width, height, data: reached } };
}
