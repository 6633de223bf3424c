import { addPart, addSheet, type Mesh } from '../geometry/mesh.ts';
import { along, cross, squareTo, subtract, unit, type Vec3 } from '../geometry/vector.ts';
import type { Detail } from './leaf-blade.ts';

export interface StemTube {
  readonly points: readonly Vec3[];
  readonly baseRadiusMm: number;
  readonly tipRadiusMm: number;
  readonly colour: Vec3;
  /** Places of the joints along the stem, as a share of its points; the stem swells there. */
  readonly jointShares: readonly number[];
  readonly shoot: number;
  readonly seed: number;
}

/** Adds a round stem along a line of points, tapering, swollen at its joints and closed at the tip. */
export function addStemTube(mesh: Mesh, stem: StemTube, detail: Detail): void {
  const { points } = stem;
  if (points.length < 2) return;
  const part = addPart(mesh, {
    material: 'stem',
    canopy: true,
    colour: stem.colour,
    pattern: [],
    shoot: stem.shoot,
    seed: stem.seed,
  });
  const columns = detail === 'fine' ? 9 : 5;
  const sheetPoints: Vec3[] = [];
  const coordinates: Vec3[] = [];
  let side: Vec3 = [1, 0, 0];
  const last = points.length - 1;
  for (let row = 0; row <= last + 1; row++) {
    const at = Math.min(row, last);
    const point = points[at] as Vec3;
    const ahead = points[Math.min(at + 1, last)] as Vec3;
    const behind = points[Math.max(at - 1, 0)] as Vec3;
    const direction = unit(subtract(ahead, behind));
    side = squareTo(side, direction);
    const other = cross(direction, side);
    const share = at / last;
    const swelling = stem.jointShares.some((joint) => Math.abs(joint - share) * last < 0.6) ? 1.16 : 1;
    const closing = row > last ? 0.01 : 1;
    const radius = (stem.baseRadiusMm + (stem.tipRadiusMm - stem.baseRadiusMm) * share) * swelling * closing;
    for (let column = 0; column < columns; column++) {
      const angle = (-2 * Math.PI * column) / (columns - 1);
      const rim = along(along(point, side, radius * Math.cos(angle)), other, radius * Math.sin(angle));
      sheetPoints.push(rim);
      coordinates.push([column / (columns - 1), share, 0]);
    }
  }
  addSheet(mesh, part, { rows: last + 2, columns, points: sheetPoints, coordinates });
}
