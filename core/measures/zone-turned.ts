import type { Mask } from '../raster/raster.ts';

/**
 * The canopy with a zone put on the other side of the outline.
 *
 * @param canopy px
 * @param zone of the canopy's size
 * @param inCanopy whether the zone was counted as canopy
 * @param reachPx how far zone and outline may lie apart though they mean one edge
 *
 * Notes: the zone was found on a coarser picture than the outline was drawn on. Where a zone that is taken away ends
 * at the old outline, a rind as thin as that difference would stay and still pass for the outline, so it goes too.
 *
 * Example: a lobe taken off a disc leaves the disc, without the lobe's rind.
 */
export function zoneTurned(canopy: Mask, zone: Mask, inCanopy: boolean, reachPx: number): Mask {
  const { width, height } = canopy;
  if (!inCanopy) {
    const data = canopy.data.map((inside, i) => inside | (zone.data[i] as number));
    return { width, height, data };
  }
  const nearZone = grown(zone, reachPx);
  const outside = { width, height, data: canopy.data.map((inside) => 1 - inside) };
  const nearOutside = grown(outside, reachPx);
  const data = canopy.data.map((inside, i) => {
    const isRind = nearZone.data[i] === 1 && nearOutside.data[i] === 1;
    return inside === 1 && zone.data[i] === 0 && !isRind ? 1 : 0;
  });
  return { width, height, data };
}

/** Grown by a square of `2 * reachPx + 1` px a side: first along the rows, then along the columns. */
function grown(mask: Mask, reachPx: number): Mask {
  const { width, height } = mask;
  const along = new Uint8Array(width * height);
  const both = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) growLine(mask.data, along, y * width, 1, width, reachPx);
  for (let x = 0; x < width; x++) growLine(along, both, x, width, height, reachPx);
  return { width, height, data: both };
}

/** Grows one row or column: `count` places from `first` on, `step` apart. */
function growLine(
  from: Uint8Array,
  to: Uint8Array,
  first: number,
  step: number,
  count: number,
  reachPx: number,
) {
  let ahead = -1 - reachPx;
  for (let k = 0; k < count; k++) {
    if (from[first + k * step] === 1) ahead = k;
    if (k - ahead <= reachPx) to[first + k * step] = 1;
  }
  let behind = count + reachPx;
  for (let k = count - 1; k >= 0; k--) {
    if (from[first + k * step] === 1) behind = k;
    if (behind - k <= reachPx) to[first + k * step] = 1;
  }
}
