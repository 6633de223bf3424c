import { type FoundPlant, PARTS, type Pot, type UnsureZone } from '../../core/canopy/found-plant.ts';
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

/** A cut-out as the canopy step would hand it on: sure of itself, all leaf, unless told otherwise. */
export function foundPlant(
  canopy: Mask,
  pot: Pot | null = null,
  edgeUncertaintyPx = 0.5,
  told: Partial<FoundPlant> = {},
): FoundPlant {
  const { width, height } = canopy;
  const leaf = PARTS.indexOf('leaf');
  return {
    ok: true,
    canopy,
    parts: { width, height, data: canopy.data.map((inside) => inside * leaf) },
    pot,
    certainty: { width, height, data: new Uint8Array(width * height).fill(255) },
    unsureZones: [],
    confidence: 0.98,
    edgeUncertaintyPx,
    notes: [],
    ...told,
  };
}

/** An unsure zone drawn like a mask, in the smallest window that holds it. */
export function unsureZone(
  drawn: Mask,
  { inCanopy, chance }: Pick<UnsureZone, 'inCanopy' | 'chance'>,
): UnsureZone {
  const inside = [...drawn.data.keys()].filter((i) => drawn.data[i] === 1);
  const columns = inside.map((i) => i % drawn.width);
  const rows = inside.map((i) => Math.floor(i / drawn.width));
  const [left, top] = [Math.min(...columns), Math.min(...rows)];
  const [width, height] = [Math.max(...columns) - left + 1, Math.max(...rows) - top + 1];
  const data = new Uint8Array(width * height);
  inside.forEach((_, k) => {
    data[((rows[k] as number) - top) * width + (columns[k] as number) - left] = 1;
  });
  return { mask: { width, height, data, left, top }, inCanopy, chance, areaPx: inside.length };
}

/** A pot rim of the given half width below a plant, seen level from its own height. */
export function rim(axisX: number, y: number, halfWidth: number): Pot {
  return potWithRim([axisX - halfWidth, y], [axisX + halfWidth, y]);
}

/** A pot whose rim's ends are known without doubt; how far the rim opens to the view is not. */
export function potWithRim(rimLeftPx: PointPx, rimRightPx: PointPx): Pot {
  return {
    rimLeftPx,
    rimRightPx,
    rim: {
      centrePx: [(rimLeftPx[0] + rimRightPx[0]) / 2, (rimLeftPx[1] + rimRightPx[1]) / 2],
      halfWidthPx: Math.hypot(rimRightPx[0] - rimLeftPx[0], rimRightPx[1] - rimLeftPx[1]) / 2,
      halfHeightPx: 0,
      heightSeen: false,
    },
    rimDoubtPx: 0,
    rimTaper: 0,
  };
}
