import type { OpenCvDoor } from '../opencv/door.ts';
import { closeMask, dilateMask, erodeMask } from '../opencv/masks.ts';
import { highestNearby, lowestNearby, resizeMask } from '../opencv/pictures.ts';
import { labOfRaster } from '../raster/lab.ts';
import type { Mask, Raster } from '../raster/raster.ts';
import { backdropDistance, evenDistance } from './backdrop-distance.ts';
import { type Backdrop, deltaAt } from './backdrop-model.ts';
import type { Place } from './place.ts';
import { fillSmallHoles } from './small-holes.ts';
import { cropRaster, windowAround } from './window.ts';

/** How far from the first outline the true one is looked for, px of the picture the first was drawn on. */
const SEARCH_PX = 2;
/** How far an edge's blur reaches, px of the full raster. */
const BLUR_PX = 2;
/** ΔE beyond which a leaf counts as fully unlike the backdrop. */
const FULL_DELTA = 40;
/** Gaps narrower than this share of the longer side are below what the edge can be known to, and are closed. */
const NARROW_GAP_SHARE = 1 / 1000;

/**
 * Draws the canopy's outline anew on the full raster, where a pixel lies half way between leaf and backdrop.
 *
 * An edge pixel mixes leaf and backdrop; it belongs to the canopy when its distance from the backdrop is at least
 * half of the largest close by. Away from edges everything unlike the backdrop stays, so gaps that show the backdrop
 * become holes. What the first decision gave to the pot stays with the pot.
 */
export function refineEdge(
  door: OpenCvDoor,
  raster: Raster,
  first: { readonly canopy: Mask; readonly object: Mask; readonly given: Mask },
  place: Place & { readonly backdrop: Backdrop },
): DrawnEdge {
  const near = resizeMask(door, dilateMask(door, first.canopy, SEARCH_PX), raster);
  const pot = resizeMask(door, withoutMask(first.object, first.canopy), raster);
  const window = windowAround(near);
  const data = new Uint8Array(raster.width * raster.height);
  if (window === null)
    return { canopy: { width: raster.width, height: raster.height, data }, uncertaintyPx: 0 };
  const picture = labOfRaster(cropRaster(raster, window));
  const expected = place.expectedIn(window, picture);
  const distance = backdropDistance(picture, expected);
  const delta = new Float32Array(distance.length);
  for (let i = 0; i < delta.length; i++) delta[i] = deltaAt(picture, expected, i);
  const most = highestNearby(door, delta, window, BLUR_PX);
  const least = lowestNearby(door, distance, window, BLUR_PX);
  const surest = highestNearby(door, distance, window, BLUR_PX);
  const darkest = lowestNearby(door, picture.l, window, BLUR_PX);
  const lightest = highestNearby(door, picture.l, window, BLUR_PX);
  const even = evenDistance(place.backdrop.spread);
  const drawn = new Uint8Array(distance.length);
  let doubtful = 0;
  for (let i = 0; i < distance.length; i++) {
    const onEdge = (least[i] as number) < even && (surest[i] as number) > 1.5 * even;
    if (!onEdge) {
      if ((distance[i] as number) >= even) drawn[i] = 1;
      continue;
    }
    const backdropL = expected.l[i] as number;
    const [low, high] = [darkest[i] as number, lightest[i] as number];
    const leafL = backdropL - low > high - backdropL ? low : high;
    const halfWayUp = halfWay(backdropL, leafL) * overexposedShare(backdropL);
    const wanted = halfWayUp * Math.min(FULL_DELTA, most[i] as number);
    const ratio = (delta[i] as number) / Math.max(even, wanted);
    if (ratio >= 1) drawn[i] = 1;
    if (ratio > 0.6 && ratio < 1.5) doubtful++;
  }
  const radius = Math.max(1, Math.round(NARROW_GAP_SHARE * Math.max(raster.width, raster.height)));
  const closed = closeMask(door, { width: window.width, height: window.height, data: drawn }, radius);
  for (let i = 0; i < closed.data.length; i++) {
    if (closed.data[i] === 0) continue;
    const at = (window.top + Math.floor(i / window.width)) * raster.width + window.left + (i % window.width);
    if (near.data[at] === 1 && pot.data[at] === 0) data[at] = 1;
  }
  const given = resizeMask(door, first.given, raster);
  const decided = resizeMask(door, first.canopy, raster);
  for (let i = 0; i < data.length; i++) {
    data[i] = (data[i] as number) | ((given.data[i] as number) & (decided.data[i] as number));
  }
  // Inside, an empty photo's likeness is no proof of a gap: there the first decision stands.
  if (place.fromEmpty) {
    const core = resizeMask(door, erodeMask(door, first.canopy, SEARCH_PX), raster);
    for (let i = 0; i < data.length; i++) data[i] = (data[i] as number) | (core.data[i] as number);
  }
  const canopy = fillSmallHoles(door, { width: raster.width, height: raster.height, data });
  return { canopy, uncertaintyPx: uncertainty(canopy, doubtful) };
}

/** The outline drawn, and one standard deviation of its place, px. */
export interface DrawnEdge {
  readonly canopy: Mask;
  readonly uncertaintyPx: number;
}

/**
 * The band of pixels that a threshold 0.6 to 1.5 times as strict would give to the other side, as a width along the
 * outline, is taken for ±1 standard deviation; half a px for the pixel grid is added in quadrature.
 */
function uncertainty(canopy: Mask, doubtful: number): number {
  return Math.hypot(0.5, doubtful / (2 * Math.max(1, outlineLength(canopy))));
}

/** Number of inside pixels with an outside neighbour. */
function outlineLength({ width, height, data }: Mask): number {
  let length = 0;
  for (let y = 1; y < height - 1; y++) {
    for (let i = y * width + 1; i < (y + 1) * width - 1; i++) {
      if (data[i] === 0) continue;
      if (data[i - 1] === 0 || data[i + 1] === 0 || data[i - width] === 0 || data[i + width] === 0) length++;
    }
  }
  return length;
}

/**
 * Where between backdrop (0) and leaf (1) a pixel half covered by leaf lies on the L* scale: light mixes before it is
 * turned into L*, so before a white backdrop the middle lies nearer to it, before a black one nearer to the leaf.
 */
function halfWay(backdropL: number, leafL: number): number {
  const span = leafL - backdropL;
  if (Math.abs(span) < 8) return 0.5;
  const mixed = 0.5 * (luminanceOf(backdropL) + luminanceOf(leafL));
  return (lightnessOf(mixed) - backdropL) / span;
}

/** From which L* a backdrop may be, and at which it surely is, lighter than the photo can show. */
const CLIPPING_L = { from: 88, full: 96 };
/** Where half coverage then seems to lie, share of where it would be. */
const CLIPPED_SHARE = 0.65;

/**
 * A backdrop lighter than white is cut down to white, so an edge pixel half covered by leaf looks lighter than half-way
 * and the leaf seems thinner than it is: the edge then lies nearer to the backdrop's colour.
 */
function overexposedShare(backdropL: number): number {
  const clipped = (backdropL - CLIPPING_L.from) / (CLIPPING_L.full - CLIPPING_L.from);
  return 1 - (1 - CLIPPED_SHARE) * Math.max(0, Math.min(1, clipped));
}

/** Relative luminance 0–1 of L* and back (CIE 15:2018, above the toe; the toe's error does not matter here). */
const luminanceOf = (lightness: number): number => ((lightness + 16) / 116) ** 3;
const lightnessOf = (luminance: number): number => 116 * Math.cbrt(luminance) - 16;

function withoutMask(mask: Mask, taken: Mask): Mask {
  return { ...mask, data: mask.data.map((inside, i) => (inside === 1 && taken.data[i] === 0 ? 1 : 0)) };
}
