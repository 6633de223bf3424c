import type { FoundPlant, Pot } from '../../core/canopy/found-plant.ts';
import type { Mask, PointPx } from '../../core/raster/raster.ts';

/** Draws a mask: a pixel is inside when its middle is. No soft edges. */
export function drawMask(width: number, height: number, inside: (x: number, y: number) => boolean): Mask {
  const data = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (inside(x + 0.5, y + 0.5)) data[y * width + x] = 1;
    }
  }
  return { width, height, data };
}

/** A mask drawn as text: `#` inside, anything else outside, one line a row. */
export function maskOf(text: string): Mask {
  const rows = text.trim().split(/\s*\n\s*/);
  const width = rows[0]?.length ?? 0;
  return {
    width,
    height: rows.length,
    data: Uint8Array.from(rows.join(''), (letter) => (letter === '#' ? 1 : 0)),
  };
}

export const disc =
  ([cx, cy]: PointPx, radius: number) =>
  (x: number, y: number) =>
    (x - cx) ** 2 + (y - cy) ** 2 <= radius ** 2;

export const oval =
  ([cx, cy]: PointPx, halfWidth: number, halfHeight: number) =>
  (x: number, y: number) =>
    ((x - cx) / halfWidth) ** 2 + ((y - cy) / halfHeight) ** 2 <= 1;

/** A cut-out as the canopy step would hand it on. */
export function foundPlant(canopy: Mask, pot: Pot | null = null, edgeUncertaintyPx = 0.5): FoundPlant {
  return { ok: true, canopy, pot, edgeUncertaintyPx, notes: [] };
}

/** A pot rim of the given half width below a plant. */
export function rim(axisX: number, y: number, halfWidth: number): Pot {
  return { rimLeftPx: [axisX - halfWidth, y], rimRightPx: [axisX + halfWidth, y] };
}
