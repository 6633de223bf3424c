import type { Stroke } from '../../../core/canopy/stroke.ts';
import { boxAround, type Point } from '../photo/points.ts';
import { distanceToSegment, finishedStrokes } from './brush.ts';

/** A round dab that lies wholly inside the zone. */
export interface Dab {
  readonly at: Point;
  readonly radiusPx: number;
}

/** About how many cells of the grid lie in a zone. */
const CELLS = 1000;
const MOST_DABS = 80;
/** A photo has room for 200 strokes; many zones may have to share it. */
const MOST_STROKES = 6;
/** Dabs are set until this share of the zone lies under them. */
const ENOUGH = 0.9;
/** The smallest dab: a point without width would paint nothing. */
const LEAST_RADIUS_PX = 0.75;
/** A line is as wide as its dabs on average: those smaller than this share of its first go into another. */
const LIKE_SIZE = 0.8;

/**
 * Covers a zone with dabs, the roomiest place first: again and again the largest circle about the open
 * place farthest from the zone's edge. No dab leaves the zone, so an answer about one zone says nothing
 * about its neighbours.
 */
export function dabsOver(outlinePx: readonly Point[]): Dab[] {
  const cells = cellsInside(outlinePx);
  const dabs: Dab[] = [];
  let open = cells;
  while (open.length > cells.length * (1 - ENOUGH) && dabs.length < MOST_DABS) {
    const dab = roomiestOf(open);
    if (!dab) break;
    dabs.push(dab);
    open = open.filter(({ at }) => Math.hypot(at[0] - dab.at[0], at[1] - dab.at[1]) > dab.radiusPx);
  }
  return dabs;
}

/** The largest dab that the zone holds; `null` for a zone without room. */
export function roomiestPlace(outlinePx: readonly Point[]): Dab | null {
  return roomiestOf(cellsInside(outlinePx));
}

function roomiestOf(cells: readonly Cell[]): Dab | null {
  const [first, ...others] = cells;
  if (!first) return null;
  const { at, edgePx } = others.reduce((best, cell) => (cell.edgePx > best.edgePx ? cell : best), first);
  return { at, radiusPx: Math.max(edgePx, LEAST_RADIUS_PX) };
}

/**
 * The answer to "Is this leaf?" as strokes, the broadest first: yes keeps the zone, no removes it. The cut
 * itself carries an answer on to what looks alike, so what a few strokes leave open of a ragged zone follows.
 */
export function zoneStrokes(outlinePx: readonly Point[], isLeaf: boolean): Stroke[] {
  const kind = isLeaf ? 'keep' : 'remove';
  return chainsOf(dabsOver(outlinePx), outlinePx)
    .slice(0, MOST_STROKES)
    .flatMap((chain) => {
      const widthPx = (2 * chain.reduce((sum, { radiusPx }) => sum + radiusPx, 0)) / chain.length;
      return finishedStrokes(
        kind,
        widthPx,
        chain.map(({ at }) => at),
      );
    });
}

/** Strings neighbouring dabs of like size into one line each, where the way between them stays in the zone. */
function chainsOf(dabs: readonly Dab[], outlinePx: readonly Point[]): Dab[][] {
  const chains: Dab[][] = [];
  let loose = [...dabs];
  while (loose.length > 0) {
    const [first, ...others] = loose as [Dab, ...Dab[]];
    const chain = [first];
    loose = others;
    // From the roomiest dab the line grows one way, then the other.
    for (const side of ['tail', 'head'] as const) {
      for (;;) {
        const end = (side === 'tail' ? chain.at(-1) : chain[0]) as Dab;
        const next = neighbourOf(end, loose, first.radiusPx, outlinePx);
        if (!next) break;
        if (side === 'tail') chain.push(next);
        else chain.unshift(next);
        loose = loose.filter((one) => one !== next);
      }
    }
    chains.push(chain);
  }
  return chains;
}

/** The nearest dab of like size that a line may run to without leaving the zone. */
function neighbourOf(
  end: Dab,
  loose: readonly Dab[],
  radiusPx: number,
  outlinePx: readonly Point[],
): Dab | undefined {
  return loose
    .filter((one) => one.radiusPx > radiusPx * LIKE_SIZE && gap(end, one) < 4 * radiusPx)
    .sort((a, b) => gap(end, a) - gap(end, b))
    .find((one) => staysInside(end, one, outlinePx));
}

function gap(a: Dab, b: Dab): number {
  return Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
}

function staysInside(a: Dab, b: Dab, outlinePx: readonly Point[]): boolean {
  const radiusPx = Math.min(a.radiusPx, b.radiusPx);
  return [0.25, 0.5, 0.75].every((share) => {
    const at: Point = [a.at[0] + (b.at[0] - a.at[0]) * share, a.at[1] + (b.at[1] - a.at[1]) * share];
    return contains(outlinePx, at) && edgeDistance(at, outlinePx) >= radiusPx * 0.7;
  });
}

/** The middle of a cell of the grid, with its distance to the zone's edge. */
interface Cell {
  readonly at: Point;
  readonly edgePx: number;
}

function cellsInside(outlinePx: readonly Point[]): Cell[] {
  const box = boxAround(outlinePx);
  const cell = Math.sqrt(polygonArea(outlinePx) / CELLS);
  if (!box || cell === 0) return [];
  const inside: Cell[] = [];
  for (let y = box.y + cell / 2; y < box.y + box.height; y += cell) {
    for (let x = box.x + cell / 2; x < box.x + box.width; x += cell) {
      const at: Point = [x, y];
      if (contains(outlinePx, at)) inside.push({ at, edgePx: edgeDistance(at, outlinePx) });
    }
  }
  return inside;
}

function edgeDistance(at: Point, outlinePx: readonly Point[]): number {
  return outlinePx.reduce(
    (least, to, index) => Math.min(least, distanceToSegment(at, outlinePx.at(index - 1) ?? to, to)),
    Number.POSITIVE_INFINITY,
  );
}

/** Area inside the closed outline, px², by the shoelace formula. */
function polygonArea(outlinePx: readonly Point[]): number {
  const twice = outlinePx.reduce((sum, [bx, by], index) => {
    const [ax, ay] = outlinePx.at(index - 1) ?? [bx, by];
    return sum + ax * by - bx * ay;
  }, 0);
  return Math.abs(twice) / 2;
}

/** Whether the closed outline holds the point, by the number of edges to its right (even-odd rule). */
export function contains(outlinePx: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  outlinePx.forEach(([bx, by], index) => {
    const [ax, ay] = outlinePx.at(index - 1) ?? [bx, by];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}
