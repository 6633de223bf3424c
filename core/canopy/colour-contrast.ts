import type { LabPicture } from '../raster/lab.ts';

/** Which class a pixel teaches: 1 canopy, 2 pot, 0 neither. */
export type Lessons = Uint8Array;

const L_CELLS = 10;
const AB_CELLS = 30;
const AB_CELL = 5;
const AB_SPAN = (AB_CELLS * AB_CELL) / 2;
/** Share of a class that a colour must have before it counts as seen. */
const UNSEEN_SHARE = 0.0015;

/**
 * How much more often each pixel's colour is met in the canopy of this very photo than on its pot: logarithm of the
 * ratio, held within ±3; 0 where the colour was met in neither or alike in both, so a pot whose colour the leaves
 * share says nothing instead of something wrong.
 *
 * Both classes are counted in a coarse, smoothed table over L*a*b*.
 */
export function colourContrast(picture: LabPicture, lessons: Lessons): Float32Array {
  const cells = cellOfEachPixel(picture);
  const canopy = smoothedShares(cells, lessons, 1);
  const pot = smoothedShares(cells, lessons, 2);
  const ratio = new Float32Array(L_CELLS * AB_CELLS * AB_CELLS);
  for (let cell = 0; cell < ratio.length; cell++) {
    const odds = ((canopy[cell] as number) + UNSEEN_SHARE) / ((pot[cell] as number) + UNSEEN_SHARE);
    ratio[cell] = Math.max(-3, Math.min(3, Math.log(odds)));
  }
  const contrast = new Float32Array(cells.length);
  for (let i = 0; i < cells.length; i++) contrast[i] = ratio[cells[i] as number] as number;
  return contrast;
}

function cellOfEachPixel({ l, a, b }: LabPicture): Int32Array {
  const cells = new Int32Array(l.length);
  for (let i = 0; i < cells.length; i++) {
    const li = Math.max(0, Math.min(L_CELLS - 1, Math.floor(((l[i] as number) * L_CELLS) / 100)));
    const ai = Math.max(0, Math.min(AB_CELLS - 1, Math.floor(((a[i] as number) + AB_SPAN) / AB_CELL)));
    const bi = Math.max(0, Math.min(AB_CELLS - 1, Math.floor(((b[i] as number) + AB_SPAN) / AB_CELL)));
    cells[i] = (li * AB_CELLS + ai) * AB_CELLS + bi;
  }
  return cells;
}

/** Shares of a class's pixels by cell, smoothed by ¼ ½ ¼ along each axis. All 0 when the class has no pixel. */
function smoothedShares(cells: Int32Array, lessons: Lessons, wanted: number): Float32Array {
  let shares = new Float32Array(L_CELLS * AB_CELLS * AB_CELLS);
  let count = 0;
  for (let i = 0; i < cells.length; i++) {
    if (lessons[i] !== wanted) continue;
    const cell = cells[i] as number;
    shares[cell] = (shares[cell] as number) + 1;
    count++;
  }
  if (count === 0) return shares;
  for (const stride of [1, AB_CELLS, AB_CELLS * AB_CELLS]) {
    const smooth = new Float32Array(shares.length);
    for (let cell = 0; cell < shares.length; cell++) {
      const before = shares[cell - stride] ?? 0;
      const after = shares[cell + stride] ?? 0;
      smooth[cell] = 0.25 * before + 0.5 * (shares[cell] as number) + 0.25 * after;
    }
    shares = smooth;
  }
  return shares.map((value) => value / count);
}
