import type { OpenCvDoor } from '../opencv/door.ts';
import { resizeMask } from '../opencv/pictures.ts';
import { closeMask, dilateMask, erodeMask } from '../raster/discs.ts';
import { type LabPicture, labOfRaster } from '../raster/lab.ts';
import { emptyMask, type Mask, type Raster } from '../raster/raster.ts';
import { backdropDistance, evenDistance } from './backdrop-distance.ts';
import { type Backdrop, deltaAt } from './backdrop-model.ts';
import type { Place } from './place.ts';
import { fillSmallHoles } from './small-holes.ts';
import { cropMask, cropRaster, placedIn, type Window, windowAround } from './window.ts';

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
  const whole = { width: raster.width, height: raster.height };
  const nearby = resizeMask(door, dilateMask(first.canopy, SEARCH_PX), raster);
  const window = windowAround(nearby);
  if (window === null) return { canopy: emptyMask(whole.width, whole.height), uncertaintyPx: 0 };
  const enlarged = (mask: Mask) => cropMask(resizeMask(door, mask, raster), window);
  const near = cropMask(nearby, window);
  const pot = enlarged(withoutMask(first.object, first.canopy));
  const decided = enlarged(first.canopy);
  const given = enlarged(first.given);
  // Inside, an empty photo's likeness is no proof of a gap: there the first decision stands.
  const inside = place.fromEmpty ? enlarged(erodeMask(first.canopy, SEARCH_PX)) : null;

  const { drawn, doubtful } = drawByColour(raster, window, place);
  const radius = Math.max(1, Math.round(NARROW_GAP_SHARE * Math.max(raster.width, raster.height)));
  const closed = closeMask(drawn, radius);
  const data = new Uint8Array(closed.data.length);
  for (let i = 0; i < data.length; i++) {
    const isHeld = (given.data[i] === 1 && decided.data[i] === 1) || inside?.data[i] === 1;
    const isSeen = closed.data[i] === 1 && near.data[i] === 1 && pot.data[i] === 0;
    data[i] = isHeld || isSeen ? 1 : 0;
  }
  const canopy = fillSmallHoles(door, { ...closed, data });
  return { canopy: placedIn(whole, window, canopy), uncertaintyPx: uncertainty(canopy, doubtful) };
}

/** What by colour is not backdrop in the window, to the px, and the number of px that might as well be. */
function drawByColour(
  raster: Raster,
  window: Window,
  place: Place & { readonly backdrop: Backdrop },
): { drawn: Mask; doubtful: number } {
  const picture = labOfRaster(cropRaster(raster, window));
  const expected = place.expectedIn(window, picture);
  const distance = backdropDistance(picture, expected);
  const even = evenDistance(place.backdrop.spread);
  const { width, height } = window;
  const data = new Uint8Array(distance.length);
  for (let i = 0; i < data.length; i++) data[i] = (distance[i] as number) >= even ? 1 : 0;
  let doubtful = 0;
  const edge = edgePixels({ width, height, data }, BLUR_PX);
  for (const i of edge) {
    const { most, surest, darkest, lightest } = surroundings(i, { picture, expected, distance });
    if (surest <= 1.5 * even) continue;
    const backdropL = expected.l[i] as number;
    const leafL = backdropL - darkest > lightest - backdropL ? darkest : lightest;
    const halfWayUp = halfWay(backdropL, leafL) * overexposedShare(backdropL);
    const ratio = deltaAt(picture, expected, i) / Math.max(even, halfWayUp * Math.min(FULL_DELTA, most));
    data[i] = ratio >= 1 ? 1 : 0;
    if (ratio > 0.6 && ratio < 1.5) doubtful++;
  }
  return { drawn: { width, height, data }, doubtful };
}

/** Extremes within the reach of blur around a px: largest ΔE and distance from the backdrop, darkest and lightest L*. */
function surroundings(
  at: number,
  seen: { readonly picture: LabPicture; readonly expected: LabPicture; readonly distance: Float32Array },
) {
  const { picture, expected, distance } = seen;
  const { width, height } = picture;
  const row = Math.floor(at / width);
  const column = at % width;
  const left = Math.max(0, column - BLUR_PX);
  const right = Math.min(width - 1, column + BLUR_PX);
  const bottom = Math.min(height - 1, row + BLUR_PX);
  let mostSquared = 0;
  let surest = 0;
  let darkest = 100;
  let lightest = 0;
  for (let y = Math.max(0, row - BLUR_PX); y <= bottom; y++) {
    for (let i = y * width + left; i <= y * width + right; i++) {
      const l = picture.l[i] as number;
      const offL = l - (expected.l[i] as number);
      const offA = (picture.a[i] as number) - (expected.a[i] as number);
      const offB = (picture.b[i] as number) - (expected.b[i] as number);
      const squared = offL * offL + offA * offA + offB * offB;
      if (squared > mostSquared) mostSquared = squared;
      const far = distance[i] as number;
      if (far > surest) surest = far;
      if (l < darkest) darkest = l;
      if (l > lightest) lightest = l;
    }
  }
  return { most: Math.sqrt(mostSquared), surest, darkest, lightest };
}

/** The pixels that have both inside and outside in the square of `2 * reachPx + 1` px around them. */
function edgePixels({ width, height, data }: Mask, reachPx: number): number[] {
  const isEdge = new Uint8Array(data.length);
  const mark = (left: number, right: number, top: number, bottom: number) => {
    const [from, until] = [Math.max(0, left), Math.min(width, right + 1)];
    for (let y = Math.max(0, top); y <= Math.min(height - 1, bottom); y++) {
      if (from < until) isEdge.fill(1, y * width + from, y * width + until);
    }
  };
  // A square holds both sides when it holds two neighbours that differ.
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      if (x + 1 < width && data[i] !== data[i + 1])
        mark(x + 1 - reachPx, x + reachPx, y - reachPx, y + reachPx);
      if (y + 1 < height && data[i] !== data[i + width])
        mark(x - reachPx, x + reachPx, y + 1 - reachPx, y + reachPx);
    }
  }
  const pixels: number[] = [];
  for (let i = 0; i < isEdge.length; i++) if (isEdge[i] === 1) pixels.push(i);
  return pixels;
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
  const data = mask.data.slice();
  for (let i = 0; i < data.length; i++) if (taken.data[i] !== 0) data[i] = 0;
  return { ...mask, data };
}
