import type { PointPx } from '../../raster/raster.ts';
import type { Homography } from '../frame/frame-fit.ts';
import { centreOfCircle, mapPoint, type PaperPair, paperMap } from './paper-map.ts';
import { RING_UNIT_MM } from './ring-kinds.ts';
import type { SheetMark } from './ring-mark.ts';
import type { SheetGeometry } from './sheet-geometry.ts';

/**
 * Marks and map settled on each other: the map tells by how much each edge's ellipse stands off the mark's middle, and
 * the middles so corrected make the map. Three rounds leave nothing.
 */
export function settled(
  named: readonly SheetMark[],
  geometry: SheetGeometry,
): { marks: readonly SheetMark[]; map: Homography | null } {
  let marks = named;
  let map = paperMap(pairsOf(marks, geometry));
  if (named.length < 4) return { marks, map };
  for (let round = 0; round < 3 && map !== null; round++) {
    const last = map;
    marks = named.map((mark) => ({ ...mark, ...middleByMap(mark, placeOf(mark, geometry), last) }));
    map = paperMap(pairsOf(marks, geometry));
  }
  return { marks, map };
}

function middleByMap(
  mark: SheetMark,
  centreMm: readonly [number, number],
  map: Homography,
): { centrePx: PointPx; doubtPx: number } {
  const middle = mapPoint(map, centreMm);
  let [weights, x, y] = [0, 0, 0];
  for (const { units, centrePx, doubtPx } of mark.edges) {
    const ellipse = centreOfCircle(map, centreMm, units * RING_UNIT_MM);
    const weight = doubtPx ** -2;
    weights += weight;
    x += weight * (centrePx[0] - ellipse[0] + middle[0]);
    y += weight * (centrePx[1] - ellipse[1] + middle[1]);
  }
  return { centrePx: [x / weights, y / weights], doubtPx: weights ** -0.5 };
}

export function pairsOf(marks: readonly SheetMark[], geometry: SheetGeometry): PaperPair[] {
  return marks.map((mark) => ({ mm: placeOf(mark, geometry), px: mark.centrePx, doubtPx: mark.doubtPx }));
}

function placeOf({ id }: SheetMark, geometry: SheetGeometry): readonly [number, number] {
  const place = geometry.marks.find((mark) => mark.id === id);
  if (place === undefined) throw new RangeError(`Expected a mark of the sheet for id but received "${id}"`);
  return place.centreMm;
}

export function missOf(marks: readonly SheetMark[], geometry: SheetGeometry, map: Homography): number {
  const squares = marks.map((mark) => {
    const [x, y] = mapPoint(map, placeOf(mark, geometry));
    return (x - mark.centrePx[0]) ** 2 + (y - mark.centrePx[1]) ** 2;
  });
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / marks.length);
}
