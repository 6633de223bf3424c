import type { LabPicture } from '../raster/lab.ts';

/** Cells along L*, 10 units each, and along a* and b*, 5 units each and centred on neutral. */
const L_CELLS = 10;
const AB_CELLS = 30;
const AB_CELL = 5;
const AB_SPAN = (AB_CELLS * AB_CELL) / 2;

/** Cells of a table over L*a*b*, in which colours are counted. */
export const COLOUR_CELLS = L_CELLS * AB_CELLS * AB_CELLS;

/** The cell of a colour; what lies outside the table counts in its outermost cells. */
export function colourCell(l: number, a: number, b: number): number {
  const li = Math.max(0, Math.min(L_CELLS - 1, Math.floor((l * L_CELLS) / 100)));
  const ai = Math.max(0, Math.min(AB_CELLS - 1, Math.floor((a + AB_SPAN) / AB_CELL)));
  const bi = Math.max(0, Math.min(AB_CELLS - 1, Math.floor((b + AB_SPAN) / AB_CELL)));
  return (li * AB_CELLS + ai) * AB_CELLS + bi;
}

export function colourCells({ l, a, b }: LabPicture): Uint16Array {
  const cells = new Uint16Array(l.length);
  for (let i = 0; i < cells.length; i++) {
    cells[i] = colourCell(l[i] as number, a[i] as number, b[i] as number);
  }
  return cells;
}

/** Share of the summed weight in each cell; all 0 when no pixel has weight. `weights` holds one number a pixel. */
export function colourShares(cells: Uint16Array, weights: ArrayLike<number>): Float32Array {
  const shares = new Float32Array(COLOUR_CELLS);
  let sum = 0;
  for (let i = 0; i < cells.length; i++) {
    const weight = weights[i] as number;
    if (weight === 0) continue;
    const cell = cells[i] as number;
    shares[cell] = (shares[cell] as number) + weight;
    sum += weight;
  }
  return sum === 0 ? shares : shares.map((share) => share / sum);
}

/** Smoothed by ¼ ½ ¼ along each axis, so that a colour near one that was met counts as met. */
export function smoothShares(shares: Float32Array): Float32Array {
  let from = shares;
  for (const stride of [1, AB_CELLS, AB_CELLS * AB_CELLS]) {
    const to = new Float32Array(from.length);
    for (let cell = 0; cell < to.length; cell++) {
      const before = cell < stride ? 0 : (from[cell - stride] as number);
      const after = cell + stride < from.length ? (from[cell + stride] as number) : 0;
      to[cell] = 0.25 * before + 0.5 * (from[cell] as number) + 0.25 * after;
    }
    from = to;
  }
  return from;
}

/**
 * Logarithm of how much more often each cell's colour is met in `one` than in `other`, held within ±`most`; near 0
 * where neither has more than `unseen` of its pixels there, so what was hardly met says hardly anything.
 */
export function shareRatios(
  one: Float32Array,
  other: Float32Array,
  { unseen, most }: { readonly unseen: number; readonly most: number },
): Float32Array {
  return one.map((share, cell) => {
    const odds = (share + unseen) / ((other[cell] as number) + unseen);
    return Math.max(-most, Math.min(most, Math.log(odds)));
  });
}
