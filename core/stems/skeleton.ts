import type { Mask } from '../raster/raster.ts';

/** The eight neighbours of a pixel in order: up, then clockwise (P2 to P9 of the paper). */
const AROUND = [
  [0, -1],
  [1, -1],
  [1, 0],
  [1, 1],
  [0, 1],
  [-1, 1],
  [-1, 0],
  [-1, -1],
] as const;

/**
 * The skeleton of a mask: lines one pixel wide along the middle of its parts.
 *
 * @param mask px
 * @returns a mask of the same size; every part of `mask` keeps at least one pixel
 *
 * How: border pixels are taken off layer by layer, in two half steps a layer, as long as that neither splits a part nor shortens
 * a line. What then still stands two pixels wide (the corners of stairs, crowded joints) is taken off pixel by pixel.
 *
 * Notes: free ends lie about half a width inside the part's end. Two flaws of the paper's rule are mended as scikit-image mends them: lines two pixels wide on the
 * slant keep most of their length, and a square of 2 × 2 keeps a pixel.
 *
 * Reference: Zhang and Suen (1984), A fast parallel algorithm for thinning digital patterns, CACM 27(3):236–239; Lü and Wang (1986), A comment on it,
 * CACM 29(3):239–242, names the flaws; Yokoi, Toriwaki and Fukumura (1975) for the number that tells whether a pixel may go.
 *
 * Example: a bar of 200 × 9 leaves a line of about 194 px.
 */
export function skeletonOf(mask: Mask): Mask {
  // A margin of one pixel spares every neighbour a look at the picture's edge.
  const width = mask.width + 2;
  const data = new Uint8Array(width * (mask.height + 2));
  for (let y = 0; y < mask.height; y++)
    data.set(mask.data.subarray(y * mask.width, (y + 1) * mask.width), (y + 1) * width + 1);
  const steps = AROUND.map(([dx, dy]) => dy * width + dx);
  let standing = Int32Array.from(data.keys()).filter((at) => data[at] === 1);
  for (let gone = true; gone; ) {
    gone = false;
    for (const removable of HALF_STEPS) {
      const border = standing.filter((at) => removable[codeAt(data, at, steps)] === 1);
      if (border.length === 0) continue;
      gone = true;
      for (const at of border) data[at] = 0;
      standing = standing.filter((at) => data[at] === 1);
    }
  }
  for (const at of standing) if (SPARE[codeAt(data, at, steps)] === 1) data[at] = 0;
  const thin = new Uint8Array(mask.data.length);
  for (let y = 0; y < mask.height; y++)
    thin.set(data.subarray((y + 1) * width + 1, (y + 2) * width - 1), y * mask.width);
  return { width: mask.width, height: mask.height, data: thin };
}

/** Which neighbours stand, one bit each. */
function codeAt(data: Uint8Array, at: number, steps: readonly number[]): number {
  let code = 0;
  for (let k = 0; k < 8; k++) code |= (data[at + (steps[k] as number)] as number) << k;
  return code;
}

/**
 * Tips and corners, by the half steps in which they go: a tip has two neighbours side by side or three round a corner, a corner two at a right angle with
 * nothing between, some with a tail. No tip goes in both half steps, else a square of 2 × 2 would vanish and a slanted line two pixels wide would
 * be eaten up from its ends. The choice is that of scikit-image's table (0.19).
 */
const TIPS_AND_CORNERS: readonly (readonly (readonly number[])[])[] = [
  [
    [7, 0],
    [0, 1],
    [1, 2],
    [0, 1, 2],
    [6, 7, 0],
    [0, 2],
    [2, 4],
    [4, 6],
    [6, 0],
    [7, 0, 2],
    [0, 1, 6],
    [7, 4, 6],
    [0, 5, 6],
    [0, 1, 5, 6],
  ],
  [
    [2, 3],
    [4, 5],
    [5, 6],
    [2, 3, 4],
    [4, 5, 6],
    [0, 2],
    [2, 4],
    [4, 6],
    [6, 0],
    [0, 2, 3],
    [2, 4, 5],
    [3, 4, 6],
    [1, 2, 4, 5],
  ],
];

/** For each code whether the pixel goes in the first and in the second half step. */
const HALF_STEPS: readonly Uint8Array[] = TIPS_AND_CORNERS.map((known, half) => {
  const goes = Uint8Array.from({ length: 256 }, (_, code) => {
    const stands = (k: number) => (code >> (k % 8)) & 1;
    let [neighbours, starts] = [0, 0];
    for (let k = 0; k < 8; k++) {
      neighbours += stands(k);
      if (stands(k) === 0 && stands(k + 1) === 1) starts++;
    }
    const roundCorner = [0, 2, 4, 6].some((k) => stands(k) && stands(k + 1) && stands(k + 2));
    if (neighbours < 3 || neighbours > 6 || starts !== 1 || (neighbours === 3 && roundCorner)) return 0;
    const [up, right, down, left] = [stands(0), stands(2), stands(4), stands(6)];
    const open =
      half === 0
        ? !(up && right && down) && !(right && down && left)
        : !(up && right && left) && !(up && down && left);
    return open ? 1 : 0;
  });
  for (const neighbours of known) goes[neighbours.reduce((code, k) => code | (1 << k), 0)] = 1;
  return goes;
});

/** For each code whether a pixel of a finished skeleton may go: a corner (two edges touch others) around which all stays in one piece. */
const SPARE = Uint8Array.from({ length: 256 }, (_, code) => {
  const gap = (k: number) => 1 - ((code >> (k % 8)) & 1);
  let [touching, pieces] = [0, 0];
  for (const k of [0, 2, 4, 6]) {
    touching += 1 - gap(k);
    pieces += gap(k) - gap(k) * gap(k + 1) * gap(k + 2);
  }
  return touching >= 2 && pieces === 1 ? 1 : 0;
});
