import type { PointPx } from '../raster/raster.ts';
import type { Stroke } from './stroke.ts';

/** What was drawn, pixel by pixel. */
export interface Drawn {
  /** 1 under a keep stroke, -1 under a remove stroke, 0 elsewhere; the later stroke covers the earlier one. */
  readonly labels: Int8Array;
  /** Width of the stroke that covers the pixel, px; 0 elsewhere. */
  readonly widthPx: Float32Array;
}

/** Paints strokes in px of a picture of this size. */
export function paintStrokes(
  strokes: readonly Stroke[],
  { width, height }: { readonly width: number; readonly height: number },
): Drawn {
  const labels = new Int8Array(width * height);
  const widths = new Float32Array(width * height);
  for (const { kind, widthPx, pointsPx } of strokes) {
    const radius = Math.max(0.5, widthPx / 2);
    const label = kind === 'keep' ? 1 : -1;
    pointsPx.forEach((to, k) => {
      const from = pointsPx[Math.max(0, k - 1)] as PointPx;
      paintCapsule(width, height, from, to, radius, (i) => {
        labels[i] = label;
        widths[i] = 2 * radius;
      });
    });
  }
  return { labels, widthPx: widths };
}

/** Every pixel whose centre lies within `radius` of the straight line. */
function paintCapsule(
  width: number,
  height: number,
  [x0, y0]: PointPx,
  [x1, y1]: PointPx,
  radius: number,
  paint: (i: number) => void,
): void {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const length2 = dx * dx + dy * dy;
  const fromY = Math.max(0, Math.floor(Math.min(y0, y1) - radius));
  const toY = Math.min(height - 1, Math.ceil(Math.max(y0, y1) + radius));
  const fromX = Math.max(0, Math.floor(Math.min(x0, x1) - radius));
  const toX = Math.min(width - 1, Math.ceil(Math.max(x0, x1) + radius));
  for (let y = fromY; y <= toY; y++) {
    for (let x = fromX; x <= toX; x++) {
      const [px, py] = [x + 0.5 - x0, y + 0.5 - y0];
      const along = length2 === 0 ? 0 : Math.max(0, Math.min(1, (px * dx + py * dy) / length2));
      if (Math.hypot(px - along * dx, py - along * dy) <= radius) paint(y * width + x);
    }
  }
}
