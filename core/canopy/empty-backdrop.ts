import type { OpenCvDoor } from '../opencv/door.ts';
import { blurPlane, matOfPlane, matOfRaster, resizeRaster, shrinkRaster } from '../opencv/pictures.ts';
import { LINEAR_OF_BYTE, labOfRaster } from '../raster/lab.ts';
import type { Raster } from '../raster/raster.ts';

/** Longer side of the copies on which the shift is found, px. */
const SHIFT_SIDE_PX = 320;
/** A camera that moved by more than this share of the longer side is another place. */
const MOST_SHIFT_SHARE = 0.04;

/**
 * The photo of the empty stand, laid over this photo: shifted to where the camera now looks and brought to this
 * photo's exposure and white balance. `null` when the two do not fit.
 *
 * Shift by enhanced correlation (Evangelidis, Psarakis 2008), a move without turn; light by one gain a channel in
 * linear light, the median over what did not change.
 */
export function fitEmptyPhoto(door: OpenCvDoor, raster: Raster, empty: Raster): Raster | null {
  const shape = empty.width / empty.height / (raster.width / raster.height);
  if (shape < 0.98 || shape > 1.02) return null;
  const sized = resizeRaster(door, empty, raster.width, raster.height);
  const moved = shifted(door, raster, sized);
  return moved === null ? null : inLightOf(raster, moved);
}

function shifted(door: OpenCvDoor, raster: Raster, empty: Raster): Raster | null {
  const small = shrinkRaster(door, raster, SHIFT_SIDE_PX);
  const smallEmpty = shrinkRaster(door, empty, SHIFT_SIDE_PX);
  const scale = raster.width / small.width;
  const [photoL, emptyL] = [small, smallEmpty].map((one) => {
    const { l } = labOfRaster(one);
    // Shadows and uneven light would pull the match; what remains after taking off the broad light is detail.
    const broad = blurPlane(door, l, one, 12);
    return l.map((value, i) => Math.max(-20, Math.min(20, value - (broad[i] as number))));
  }) as [Float32Array, Float32Array];
  const shift = findShift(door, photoL, emptyL, small);
  if (shift === null) return empty;
  const most = MOST_SHIFT_SHARE * Math.max(raster.width, raster.height);
  if (Math.hypot(shift[0], shift[1]) * scale > most) return null;
  return door.use((cv, keep) => {
    const warp = keep(new cv.Mat(2, 3, cv.CV_32FC1));
    warp.data32F.set([1, 0, shift[0] * scale, 0, 1, shift[1] * scale]);
    const to = keep(new cv.Mat());
    const size = new cv.Size(raster.width, raster.height);
    const flags = cv.INTER_LINEAR | cv.WARP_INVERSE_MAP;
    cv.warpAffine(matOfRaster(cv, keep, empty), to, warp, size, flags, cv.BORDER_REPLICATE, new cv.Scalar());
    return { width: raster.width, height: raster.height, data: to.data.slice() };
  });
}

/** Where in `input` each pixel of `template` lies, as a shift in px; `null` when there is no detail to go by. */
function findShift(
  door: OpenCvDoor,
  template: Float32Array,
  input: Float32Array,
  { width, height }: { readonly width: number; readonly height: number },
): [number, number] | null {
  try {
    return door.use((cv, keep) => {
      const warp = keep(new cv.Mat(2, 3, cv.CV_32FC1));
      warp.data32F.set([1, 0, 0, 0, 1, 0]);
      const everywhere = keep(new cv.Mat(height, width, cv.CV_8UC1));
      everywhere.data.fill(255);
      const criteria = new cv.TermCriteria(cv.TermCriteria_COUNT + cv.TermCriteria_EPS, 40, 1e-4);
      const from = matOfPlane(cv, keep, template, width, height);
      const to = matOfPlane(cv, keep, input, width, height);
      cv.findTransformECC(from, to, warp, cv.MOTION_TRANSLATION, criteria, everywhere, 5);
      return [warp.data32F[2] as number, warp.data32F[5] as number];
    });
  } catch {
    // The search does not settle on a blank wall; a blank wall needs no shift.
    return null;
  }
}

/** Medians of the two photos' ratio, channel by channel, over pixels that changed alike; then applied to the empty one. */
function inLightOf(raster: Raster, empty: Raster): Raster {
  const data = new Uint8Array(raster.data.length);
  for (let c = 0; c < 3; c++) {
    const gain = centreOfMost(sortedRatios(raster, empty, c));
    const table = Uint8Array.from({ length: 256 }, (_, byte) =>
      byteOfLinear(gain * (LINEAR_OF_BYTE[byte] as number)),
    );
    for (let i = c; i < data.length; i += 3) data[i] = table[empty.data[i] as number] as number;
  }
  return { width: empty.width, height: empty.height, data };
}

/** Every so many pixels are looked at. */
const STRIDE = 7;
/** Only what is neither black nor burnt out in either photo tells the light, bytes. */
const USABLE = { above: 15, below: 250 };

/** This photo's light ÷ the empty one's in one channel, pixel by pixel, in order of size. */
function sortedRatios(raster: Raster, empty: Raster, channel: number): Float64Array {
  // A ratio hangs on two bytes only, so pairs are counted and the few that occur are put in order.
  const counts = new Uint32Array(256 * 256);
  let count = 0;
  for (let i = channel; i < raster.data.length; i += 3 * STRIDE) {
    const now = raster.data[i] as number;
    const then = empty.data[i] as number;
    if (now <= USABLE.above || then <= USABLE.above || now >= USABLE.below || then >= USABLE.below) continue;
    const pair = 256 * now + then;
    counts[pair] = (counts[pair] as number) + 1;
    count++;
  }
  const met: { readonly ratio: number; readonly count: number }[] = [];
  for (let pair = 0; pair < counts.length; pair++) {
    if (counts[pair] === 0) continue;
    const ratio = (LINEAR_OF_BYTE[pair >> 8] as number) / (LINEAR_OF_BYTE[pair & 255] as number);
    met.push({ ratio, count: counts[pair] as number });
  }
  met.sort((one, other) => one.ratio - other.ratio);
  const sorted = new Float64Array(count);
  let at = 0;
  for (const { ratio, count: times } of met) {
    sorted.fill(ratio, at, at + times);
    at += times;
  }
  return sorted;
}

/**
 * Middle of the shortest interval that holds two fifths of the values, short as a ratio of its ends (half-sample mode's first
 * step): deaf to the plant.
 */
function centreOfMost(sorted: Float64Array): number {
  if (sorted.length < 20) return 1;
  const held = Math.floor(sorted.length * 0.4);
  let best = 0;
  let narrowest = Number.POSITIVE_INFINITY;
  for (let k = 0; k + held < sorted.length; k++) {
    const wide = (sorted[k + held] as number) / (sorted[k] as number);
    if (wide >= narrowest) continue;
    best = k;
    narrowest = wide;
  }
  return sorted[best + (held >> 1)] as number;
}

function byteOfLinear(linear: number): number {
  const value = linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
  return Math.max(0, Math.min(255, Math.round(255 * value)));
}
