import { fitOf, mapPoint, type PaperPair, paperMap, slopesOfMap } from './paper-map.ts';
import { ringRadiusMm } from './ring-kinds.ts';
import type { RingMark, SheetMark } from './ring-mark.ts';
import type { PlacedMark, SheetGeometry } from './sheet-geometry.ts';

/** A mark's ellipse may differ from what the map makes of its circle by this share, by how many marks carry the map. */
const MOST_MISFIT = { row: 0.08, three: 0.3, more: 0.12 };
/** With five marks, the map's root mean square miss in ring radii. */
const MOST_MISS = 0.06;
/** The best naming must fit this much better than the next one with as many marks. */
const CLEARLY = 1.6;

export interface NamedMarks {
  readonly marks: readonly SheetMark[];
  /** How badly the naming fits, as a share; smaller is better. */
  readonly misfit: number;
}

/**
 * Tells which marks of the sheet were seen.
 *
 * @returns the naming that explains most marks; `null` when fewer than two fit, or two namings fit alike
 *
 * Notes: every naming by kind is tried. It must put the marks where they are and turn each printed circle into the
 * ellipse that was seen, which four centres alone could not tell from a sheet turned upside down.
 */
export function nameMarks(marks: readonly RingMark[], geometry: SheetGeometry): NamedMarks | null {
  const namings = allNamings(marks, geometry.marks)
    .filter((naming) => naming.length >= 2)
    .map((naming) => ({ naming, misfit: misfitOf(naming) }))
    .filter((one): one is { naming: Naming; misfit: number } => one.misfit !== null)
    .sort((one, other) => other.naming.length - one.naming.length || one.misfit - other.misfit);
  const [best, next] = namings;
  if (best === undefined) return null;
  if (next !== undefined && next.naming.length === best.naming.length && next.misfit < CLEARLY * best.misfit)
    return null;
  return { marks: best.naming.map(([mark, place]) => ({ ...mark, id: place.id })), misfit: best.misfit };
}

type Naming = readonly (readonly [RingMark, PlacedMark])[];

function allNamings(marks: readonly RingMark[], places: readonly PlacedMark[]): Naming[] {
  const [place, ...others] = places;
  if (place === undefined) return [[]];
  const namings = [...allNamings(marks, others)];
  marks.forEach((mark, k) => {
    if (mark.kind !== place.kind) return;
    const rest = marks.filter((_, at) => at !== k);
    for (const naming of allNamings(rest, others)) namings.push([[mark, place], ...naming]);
  });
  return namings;
}

function misfitOf(naming: Naming): number | null {
  const pairs = naming.map(pairOf);
  if (fitOf(pairs) === 'similarity') return misfitOfRow(naming);
  const map = paperMap(pairs);
  if (map === null) return null;
  let [miss, shape] = [0, 0];
  for (const [mark, { centreMm, radiusMm }] of naming) {
    const [x, y] = mapPoint(map, centreMm);
    miss += ((x - mark.centrePx[0]) ** 2 + (y - mark.centrePx[1]) ** 2) / mark.radiusPx ** 2;
    const [a, b, c, d] = slopesOfMap(map, centreMm);
    if (!(a * d - b * c > 0)) return null;
    // J Jᵀ r² is the square of the ellipse's matrix: px², so half its relative difference is that of lengths.
    const [xx, xy, yy] = squareOfEllipse(mark);
    const square = radiusMm ** 2;
    const apart = Math.hypot(
      (a * a + b * b) * square - xx,
      (c * c + d * d) * square - yy,
      Math.SQRT2 * ((a * c + b * d) * square - xy),
    );
    shape += (apart / Math.hypot(xx, yy, Math.SQRT2 * xy) / 2) ** 2;
  }
  const misfit = Math.sqrt(shape / naming.length);
  if (Math.sqrt(miss / naming.length) > MOST_MISS) return null;
  return misfit <= (naming.length === 3 ? MOST_MISFIT.three : MOST_MISFIT.more) ? misfit : null;
}

/** With two marks, or three in a row: the worst distance between two, told by their ellipses and by the paper. */
function misfitOfRow(naming: Naming): number | null {
  const misfits = naming.flatMap((one, k) => naming.slice(k + 1).map((other) => misfitOfTwo(one, other)));
  const worst = Math.max(...misfits);
  // A hundredth is as well as ellipses tell distances: below it no naming is better than another.
  return worst <= MOST_MISFIT.row ? Math.max(worst, 0.01) : null;
}

/** Their distance in mm as their own ellipses tell it, whatever the turn of the sheet, against the paper's. */
function misfitOfTwo([one, onePlace]: Naming[number], [other, otherPlace]: Naming[number]): number {
  const [x, y] = [other.centrePx[0] - one.centrePx[0], other.centrePx[1] - one.centrePx[1]];
  const [dx, dy] = [
    otherPlace.centreMm[0] - onePlace.centreMm[0],
    otherPlace.centreMm[1] - onePlace.centreMm[1],
  ];
  const readMm = [one, other].map((mark) => {
    const [xx, xy, yy] = squareOfEllipse(mark);
    const square = (yy * x * x - 2 * xy * x * y + xx * y * y) / (xx * yy - xy * xy);
    return Math.sqrt(square) * ringRadiusMm(mark.kind);
  });
  return Math.abs(((readMm[0] as number) + (readMm[1] as number)) / 2 / Math.hypot(dx, dy) - 1);
}

/** The ellipse's matrix squared: longer axis² along its turn, shorter axis² across. */
function squareOfEllipse({
  halfAxesPx: [longer, shorter],
  axisTurnDeg,
}: RingMark): readonly [number, number, number] {
  const turn = (axisTurnDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [p, q] = [longer ** 2, shorter ** 2];
  return [p * c * c + q * s * s, (p - q) * c * s, p * s * s + q * c * c];
}

function pairOf([mark, place]: Naming[number]): PaperPair {
  return { mm: place.centreMm, px: mark.centrePx, doubtPx: mark.doubtPx };
}
