import { PARTS, type Part, type PartMap } from '../canopy/found-plant.ts';
import type { Mask, PointPx } from '../raster/raster.ts';
import { edgeMiddles, type Loop, traceOutlines } from './outline.ts';
import { reduceOutline } from './reduce-outline.ts';

/** Closed contours of the parts that are drawn beside the canopy's own outline. */
export type PartsOutlines = Readonly<
  Record<'flower' | 'pot' | 'soil' | 'support', readonly (readonly PointPx[])[]>
>;

export const NO_OUTLINES: PartsOutlines = { flower: [], pot: [], soil: [], support: [] };

/** Longer side of the copy the parts are traced on, px: they are drawn on a screen, not measured. */
const TRACED_SIDE_PX = 800;
/** Pieces and gaps smaller than this are specks, share of the picture: a petal 7 px wide on the copy. */
const SPECK_SHARE = 0.0001;
/** Most contours and points of one part, and the points that the smallest contour gets. */
const MOST_LOOPS = 60;
const MOST_POINTS = 1200;
const LEAST_POINTS = 8;

/**
 * Outlines of the parts that are drawn: flower, pot, soil, and label or support.
 *
 * @param parts what each pixel of the raster is
 * @returns for each part its closed contours, largest first, px of the raster: pieces clockwise on screen, gaps
 * anticlockwise, so one path of all of them fills rightly; `[]` for a part that is not seen
 *
 * Notes: good to a px of a copy of 800 px. Specks below 0.01 % of the picture are dropped, then all but the 60 largest
 * contours, and the points are shared out by length, 1200 at most for a part.
 *
 * Example: a pot of 100 × 80 px, nothing else: `{ flower: [], pot: [[…four corners]], soil: [], support: [] }`
 */
export function partsOutlines(parts: PartMap): PartsOutlines {
  const pxPerPx = Math.max(1, Math.max(parts.width, parts.height) / TRACED_SIDE_PX);
  const outlinesOf = (part: Part) => {
    const copy = reducedPart(parts, part, pxPerPx);
    const speckPx = SPECK_SHARE * copy.width * copy.height;
    const loops = traceOutlines(copy)
      .map((loop) => ({ loop, areaPx: Math.abs(loopArea(loop)) }))
      .filter(({ areaPx }) => areaPx >= speckPx)
      .sort((one, other) => other.areaPx - one.areaPx)
      .slice(0, MOST_LOOPS)
      .map(({ loop }) => loop);
    const edges = loops.reduce((sum, loop) => sum + loop.length, 0);
    const spare = MOST_POINTS - LEAST_POINTS * loops.length;
    return loops.map((loop) => {
      const points = LEAST_POINTS + Math.floor((spare * loop.length) / edges);
      return reduceOutline(edgeMiddles(loop), points).map(([x, y]): PointPx => [x * pxPerPx, y * pxPerPx]);
    });
  };
  return {
    flower: outlinesOf('flower'),
    pot: outlinesOf('pot'),
    soil: outlinesOf('soil'),
    support: outlinesOf('support'),
  };
}

/** Where one part lies, each pixel of the copy asking the one its middle falls on. */
function reducedPart({ width, height, data }: PartMap, part: Part, pxPerPx: number): Mask {
  const index = PARTS.indexOf(part);
  const columns = placesOf(width, pxPerPx);
  const rows = placesOf(height, pxPerPx);
  const copy = new Uint8Array(columns.length * rows.length);
  for (let y = 0, at = 0; y < rows.length; y++) {
    const from = (rows[y] as number) * width;
    for (let x = 0; x < columns.length; x++, at++) {
      copy[at] = data[from + (columns[x] as number)] === index ? 1 : 0;
    }
  }
  return { width: columns.length, height: rows.length, data: copy };
}

function placesOf(sidePx: number, pxPerPx: number): Int32Array {
  const count = Math.max(1, Math.round(sidePx / pxPerPx));
  return Int32Array.from({ length: count }, (_, k) => Math.min(sidePx - 1, Math.floor((k + 0.5) * pxPerPx)));
}

/** Shoelace area, px²: above 0 clockwise on screen. */
function loopArea(loop: Loop): number {
  let sum = 0;
  let [beforeX, beforeY] = loop.at(-1) as PointPx;
  for (const [x, y] of loop) {
    sum += beforeX * y - x * beforeY;
    [beforeX, beforeY] = [x, y];
  }
  return sum / 2;
}
