import { type Stroke, scaleStroke } from '../../core/canopy/stroke.ts';
import type { OpenCvDoor } from '../../core/opencv/door.ts';
import { depthInMask, maskParts } from '../../core/opencv/masks.ts';
import { resizeMask } from '../../core/opencv/pictures.ts';
import { dilateMask, erodeMask } from '../../core/raster/discs.ts';
import { type Mask, maskArea, type PointPx } from '../../core/raster/raster.ts';
import { type DepthMap, pathInside } from './inside-path.ts';
import { quantile } from './quantile.ts';

/** How the simulated grower sees and draws; px of the copy that is looked at. */
export const HAND = {
  /** Longer side of what is looked at, px: about what a screen shows. */
  lookSidePx: 640,
  /** Errors no wider than twice this and a px are the outline's own blur, which nobody mends. */
  edgeBandPx: 1,
  /** The least region worth a stroke, share of the wanted canopy. */
  leastShare: 0.001,
  /** The brush fits inside the region along all but this share of the path. */
  narrowShare: 0.25,
  mostWidthPx: 80,
};

/**
 * The one stroke that a grower would draw next, by a fixed rule.
 *
 * The rule: where found and wanted canopy differ, leave out the thin band along the outline (opening); take the largest
 * connected region that is all missing or all too much; draw through its middle, from one end to the other, with the
 * widest brush that fits inside along three quarters of the way; stop short where the brush would not fit at the ends.
 * `keep` where canopy is missing, `remove` where it is too much.
 *
 * @param found the canopy as cut out
 * @param wanted the true canopy, of the same size
 * @returns the stroke in px of the masks; `null` when nothing worth a stroke is left
 */
export function nextStroke(door: OpenCvDoor, found: Mask, wanted: Mask): Stroke | null {
  const scale = Math.min(1, HAND.lookSidePx / Math.max(found.width, found.height));
  const size = { width: Math.round(found.width * scale), height: Math.round(found.height * scale) };
  const [seen, right] = [resizeMask(door, found, size), resizeMask(door, wanted, size)];
  const missing = largestRegion(door, onlyIn(right, seen));
  const tooMuch = largestRegion(door, onlyIn(seen, right));
  const [kind, region] =
    missing.areaPx >= tooMuch.areaPx ? (['keep', missing] as const) : (['remove', tooMuch] as const);
  if (region.areaPx < Math.max(1, HAND.leastShare * maskArea(right))) return null;
  const depths = { ...size, depthPx: depthInMask(door, region.mask) };
  return scaleStroke({ kind, ...lineInside(depths) }, found.width / size.width, found.height / size.height);
}

function onlyIn(one: Mask, other: Mask): Mask {
  return { ...one, data: one.data.map((inside, i) => inside & (1 - (other.data[i] as number))) };
}

/** The largest connected part that is wider than the outline's own blur. */
function largestRegion(door: OpenCvDoor, wrong: Mask): { mask: Mask; areaPx: number } {
  const opened = dilateMask(erodeMask(wrong, HAND.edgeBandPx), HAND.edgeBandPx);
  const { parts, labels } = maskParts(door, opened);
  const largest = parts[0];
  if (largest === undefined) return { mask: opened, areaPx: 0 };
  const data = Uint8Array.from(labels, (label) => (label === largest.label ? 1 : 0));
  return { mask: { ...opened, data }, areaPx: largest.areaPx };
}

function lineInside(depths: DepthMap): Pick<Stroke, 'widthPx' | 'pointsPx'> {
  const path = pathInside(depths);
  // Depth is counted to the centre of the first pixel outside, half a px beyond the region's rim.
  const depthAt = (i: number) => (depths.depthPx[i] as number) - 0.5;
  const halfWidth = Math.min(HAND.mostWidthPx / 2, quantile(path.map(depthAt), HAND.narrowShare));
  const fits = (i: number) => depthAt(i) >= halfWidth;
  const drawn = path.slice(path.findIndex(fits), path.findLastIndex(fits) + 1);
  const every = Math.max(2, Math.round(halfWidth / 2));
  const points = drawn.filter((_, k) => k % every === 0 || k === drawn.length - 1);
  return {
    widthPx: 2 * halfWidth,
    pointsPx: points.map((i): PointPx => [(i % depths.width) + 0.5, Math.floor(i / depths.width) + 0.5]),
  };
}
