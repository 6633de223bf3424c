import type { Mask } from './raster.ts';

/** Grows a mask by a disc of `radiusPx`. */
export function dilateMask(mask: Mask, radiusPx: number): Mask {
  return radiusPx < 0.5 ? mask : grown(mask, discOf(radiusPx));
}

/** Shrinks a mask by a disc of `radiusPx`; outside the picture counts as inside the mask. */
export function erodeMask(mask: Mask, radiusPx: number): Mask {
  return radiusPx < 0.5 ? mask : inverse(grown(inverse(mask), discOf(radiusPx)));
}

/** Fills what a disc of `radiusPx` does not fit into. */
export function closeMask(mask: Mask, radiusPx: number): Mask {
  return erodeMask(dilateMask(mask, radiusPx), radiusPx);
}

/** Takes away what a disc of `radiusPx` does not fit into. */
export function openMask(mask: Mask, radiusPx: number): Mask {
  return dilateMask(erodeMask(mask, radiusPx), radiusPx);
}

/** Half the width of each row of a disc of whole px, from the topmost down; the radius is rounded. */
function discOf(radiusPx: number): Int32Array {
  const reach = Math.round(radiusPx);
  return Int32Array.from({ length: 2 * reach + 1 }, (_, row) =>
    toEven(Math.sqrt((reach * reach - (row - reach) ** 2) / (reach * reach)) * reach),
  );
}

/** The nearest whole number, of two the even one. */
function toEven(value: number): number {
  const low = Math.floor(value);
  const over = value - low;
  return over > 0.5 || (over === 0.5 && low % 2 === 1) ? low + 1 : low;
}

/** Each stretch of a row is drawn, wider by the disc's rows, into the rows about it: a mask has few stretches and many px. */
function grown({ width, height, data }: Mask, halfWidths: Int32Array): Mask {
  const reach = (halfWidths.length - 1) / 2;
  const to = new Uint8Array(data.length);
  for (let y = 0; y < height; y++) {
    const row = data.subarray(y * width, (y + 1) * width);
    const top = Math.max(0, y - reach);
    const bottom = Math.min(height - 1, y + reach);
    for (let start = row.indexOf(1); start >= 0; ) {
      const gap = row.indexOf(0, start);
      const end = gap < 0 ? width : gap;
      for (let line = top; line <= bottom; line++) {
        const half = halfWidths[line - y + reach] as number;
        to.fill(1, line * width + Math.max(0, start - half), line * width + Math.min(width, end + half));
      }
      start = row.indexOf(1, end);
    }
  }
  return { width, height, data: to };
}

function inverse({ width, height, data }: Mask): Mask {
  const other = new Uint8Array(data.length);
  for (let i = 0; i < other.length; i++) other[i] = 1 - (data[i] as number);
  return { width, height, data: other };
}
