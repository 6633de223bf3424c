import type { Mask, Raster } from '../raster/raster.ts';

/** A rectangle of a raster, px. */
export interface Window {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The smallest rectangle around a mask with a margin of a few px; `null` for an empty mask. */
export function windowAround({ width, height, data }: Mask): Window | null {
  let [left, top, right, bottom] = [width, height, -1, -1];
  for (let y = 0; y < height; y++) {
    const row = data.subarray(y * width, (y + 1) * width);
    const first = row.indexOf(1);
    if (first < 0) continue;
    left = Math.min(left, first);
    right = Math.max(right, row.lastIndexOf(1));
    top = Math.min(top, y);
    bottom = y;
  }
  if (right < 0) return null;
  left = Math.max(0, left - 4);
  top = Math.max(0, top - 4);
  return {
    left,
    top,
    width: Math.min(width, right + 5) - left,
    height: Math.min(height, bottom + 5) - top,
  };
}

/** The part of a raster inside the window. */
export function cropRaster(raster: Raster, window: Window): Raster {
  const data = new Uint8Array(3 * window.width * window.height);
  for (let y = 0; y < window.height; y++) {
    const from = 3 * ((window.top + y) * raster.width + window.left);
    data.set(raster.data.subarray(from, from + 3 * window.width), 3 * y * window.width);
  }
  return { width: window.width, height: window.height, data };
}

/** The part of a mask inside the window. */
export function cropMask(mask: Mask, window: Window): Mask {
  const data = new Uint8Array(window.width * window.height);
  for (let y = 0; y < window.height; y++) {
    const from = (window.top + y) * mask.width + window.left;
    data.set(mask.data.subarray(from, from + window.width), y * window.width);
  }
  return { width: window.width, height: window.height, data };
}

/** A window's mask put back into the whole, which is empty around it. */
export function placedIn(
  whole: { readonly width: number; readonly height: number },
  window: Window,
  mask: Mask,
): Mask {
  const data = new Uint8Array(whole.width * whole.height);
  for (let y = 0; y < window.height; y++) {
    const row = mask.data.subarray(y * window.width, (y + 1) * window.width);
    data.set(row, (window.top + y) * whole.width + window.left);
  }
  return { width: whole.width, height: whole.height, data };
}
