import type { Mask, PointPx } from '../raster/raster.ts';

/** A closed line, clockwise on screen; the last point joins the first. */
export type Loop = readonly PointPx[];

/** Steps along pixel edges in clockwise order on screen: right, down, left, up. */
const STEPS: readonly PointPx[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

/**
 * Walks the edges of the pixels round every piece of a filled mask.
 *
 * @param filled mask without holes, px of the working raster
 * @returns one loop of pixel corners a piece, longest first, each step one px long; `[]` for an empty mask
 *
 * Notes: pieces are 8-connected, so a stem one pixel thin that runs diagonally stays whole. The loop
 * encloses exactly the pixels: its shoelace area is the pixel count.
 *
 * Reference: Rosenfeld and Kak (1982), Digital Picture Processing, on crack codes.
 *
 * Example: a single pixel at (3, 2) gives (3, 2), (4, 2), (4, 3), (3, 3).
 */
export function traceOutlines(filled: Mask): Loop[] {
  const { width, height, data } = filled;
  const inside = (x: number, y: number) =>
    x >= 0 && y >= 0 && x < width && y < height && data[y * width + x] === 1;
  const walked = new Uint8Array(width * height);
  const loops: Loop[] = [];

  for (let y = 0; y < height; y++) {
    const row = data.subarray(y * width, (y + 1) * width);
    for (let x = row.indexOf(1); x >= 0; x = row.indexOf(1, x)) {
      for (let i = y * width + x; x < width && row[x] === 1; x++, i++) {
        // Every loop runs right along the top edge of some pixel at least once, so starting there finds all.
        if ((y > 0 && data[i - width] === 1) || walked[i] === 1) continue;
        loops.push(walkLoop(x, y, inside, walked, width));
      }
    }
  }
  return loops.sort((a, b) => b.length - a.length);
}

function walkLoop(
  startX: number,
  startY: number,
  inside: (x: number, y: number) => boolean,
  walked: Uint8Array,
  width: number,
): Loop {
  const corners: PointPx[] = [];
  let [x, y, heading] = [startX, startY, 0];
  do {
    corners.push([x, y]);
    if (heading === 0) walked[y * width + x] = 1;
    const [dx, dy] = STEPS[heading] as PointPx;
    x += dx;
    y += dy;

    // The plant lies at the right hand. Turning left first keeps pieces that meet at a corner together.
    const aheadLeft = inside(x + (dx + dy - 1) / 2, y + (dy - dx - 1) / 2);
    const aheadRight = inside(x + (dx - dy - 1) / 2, y + (dy + dx - 1) / 2);
    if (aheadLeft) heading = (heading + 3) % 4;
    else if (!aheadRight) heading = (heading + 1) % 4;
  } while (x !== startX || y !== startY || heading !== 0);
  return corners;
}

/**
 * The outline with its staircase cut: the middles of the pixel edges, joined.
 *
 * On a straight or evenly curved border this line is nearer to the true edge than the pixel corners are,
 * and it does not shorten stems: a stem's end keeps its middle edge.
 *
 * @param corners loop of pixel corners
 * @returns as many points, on half px
 *
 * Reference: the same line as marching squares at level ½ (Lorensen and Cline 1987, in two dimensions).
 *
 * Example: a single pixel becomes a diamond.
 */
export function edgeMiddles(corners: Loop): Loop {
  return corners.map(([x, y], index) => {
    const [nextX, nextY] = corners[(index + 1) % corners.length] as PointPx;
    return [(x + nextX) / 2, (y + nextY) / 2];
  });
}
