import type { Raster } from '../../raster/raster.ts';
import type { Window } from '../window.ts';
import type { Network } from './onnx-door.ts';
import { type PixelShares, sharesOf } from './pixel-shares.ts';
import { resamplePlane } from './resample-plane.ts';

/** How the network looks; the sizes are those it was trained at. */
export const FIRST_GUESS = {
  /** Longer side of what the network sees at first and then from nearer, px; multiples of 32. */
  farSidePx: 256,
  nearSidePx: 352,
  /** The network halves the picture five times. */
  multiplePx: 32,
  /** Room around plant and pot on the second look, share of their longer side. */
  margin: 0.12,
  /** Share of the plant and pot that may fall outside on each side of the second look: stray specks. */
  strays: 0.005,
  /** Less plant and pot than this share of the picture is nothing to look at again. */
  leastSubject: 0.002,
};

/**
 * A trained network's opinion of every pixel of `raster`, at the raster's size.
 *
 * It looks twice: at the whole picture, then from nearer at plant and pot, so that a small plant in a large room
 * is seen as well as one that fills the frame. The first look need not be sharp, only find the plant, so it is
 * the smaller one; both go through the same weights. The network knows renders only (see MODEL-CARD.md); its
 * opinion is one voice beside colour and shape.
 */
export async function firstGuess(raster: Raster, network: Network): Promise<PixelShares> {
  const { width, height } = raster;
  const far = await look(raster, { left: 0, top: 0, width, height }, FIRST_GUESS.farSidePx, network);
  const closer = windowOfSubject(far, raster);
  if (closer === null) return sharesOf(width, height, (_, kind) => enlarged(far, kind, width, height));
  const near = await look(raster, closer, FIRST_GUESS.nearSidePx, network);
  return sharesOf(width, height, (_, kind) => {
    const plane = enlarged(far, kind, width, height, closer);
    const part = enlarged(near, kind, closer.width, closer.height);
    for (let y = 0; y < closer.height; y++) {
      const row = part.subarray(y * closer.width, (y + 1) * closer.width);
      plane.set(row, (closer.top + y) * width + closer.left);
    }
    return plane;
  });
}

/** What the network answered to one look: its planes one after the other, at the size it saw. */
interface Look {
  readonly width: number;
  readonly height: number;
  readonly planes: Float32Array;
}

/** The network's answer to one window of the raster, its longer side `sidePx`. */
async function look(raster: Raster, window: Window, sidePx: number, network: Network): Promise<Look> {
  const [width, height] = seenSize(window, sidePx);
  const size = width * height;
  const colours = new Float32Array(3 * size);
  for (let colour = 0; colour < 3; colour++) {
    const start = 3 * (window.top * raster.width + window.left) + colour;
    const part = { data: raster.data, width: window.width, height: window.height, start };
    const seen = resamplePlane({ ...part, step: 3, row: 3 * raster.width }, width, height);
    for (let i = 0; i < size; i++) colours[colour * size + i] = (seen[i] as number) / 255;
  }
  return { width, height, planes: await network.run(colours, width, height) };
}

/** One kind's plane of a look at another size, without what lies in `hole`. */
function enlarged(seen: Look, kind: number, width: number, height: number, hole?: Window): Float32Array {
  const start = kind * seen.width * seen.height;
  const plane = {
    data: seen.planes,
    width: seen.width,
    height: seen.height,
    start,
    step: 1,
    row: seen.width,
  };
  return resamplePlane(plane, width, height, hole);
}

/** The window's shape with the longer side as wanted, both sides as the network needs them. */
function seenSize({ width, height }: Window, sidePx: number): [number, number] {
  const { multiplePx } = FIRST_GUESS;
  const scale = sidePx / Math.max(width, height);
  const side = (px: number) => Math.max(multiplePx, Math.round((px * scale) / multiplePx) * multiplePx);
  return [side(width), side(height)];
}

/** Where plant and pot are, with room around; `null` when there is hardly any. */
function windowOfSubject(seen: Look, frame: { width: number; height: number }): Window | null {
  const { width, height, planes } = seen;
  const columns = new Float64Array(width);
  const rows = new Float64Array(height);
  let total = 0;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const subject = 1 - (planes[y * width + x] as number); // the first plane is background
      if (subject < 0.5) continue;
      columns[x] = (columns[x] as number) + subject;
      rows[y] = (rows[y] as number) + subject;
      total += subject;
    }
  }
  if (total < FIRST_GUESS.leastSubject * width * height) return null;
  const [left, right] = span(columns, total, frame.width / width);
  const [top, bottom] = span(rows, total, frame.height / height);
  const room = FIRST_GUESS.margin * Math.max(right - left, bottom - top);
  const x = Math.max(0, Math.floor(left - room));
  const y = Math.max(0, Math.floor(top - room));
  return {
    left: x,
    top: y,
    width: Math.min(frame.width, Math.ceil(right + room)) - x,
    height: Math.min(frame.height, Math.ceil(bottom + room)) - y,
  };
}

/** Where all but the strays of the mass lie, in units of `pxEach`. */
function span(mass: Float64Array, total: number, pxEach: number): [number, number] {
  const few = FIRST_GUESS.strays * total;
  let first = 0;
  for (let sum = mass[0] as number; sum <= few; sum += mass[first] as number) first++;
  let last = mass.length - 1;
  for (let sum = mass[last] as number; sum <= few; sum += mass[last] as number) last--;
  return [first * pxEach, (last + 1) * pxEach];
}
