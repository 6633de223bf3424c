import type { Vec3 } from './vector.ts';

/** What a surface is made of: decides its colour, pattern and shine. */
export type Material =
  | 'leaf'
  | 'petal'
  | 'bud'
  | 'stem'
  | 'clay'
  | 'plastic'
  | 'soil'
  | 'mark'
  | 'label'
  | 'pale';

/** One thing in the scene: a leaf, a petal, a stem, a pot wall. */
export interface Part {
  readonly material: Material;
  /** Leaf, flower and stem count as canopy; everything else hides it. */
  readonly canopy: boolean;
  /** Linear reflectance. */
  readonly colour: Vec3;
  /** A pattern's own numbers; their meaning is the material's. */
  readonly pattern: readonly number[];
  /** The shoot that carries it; -1 for none. */
  readonly shoot: number;
  /** For the pattern's chance. */
  readonly seed: number;
}

/** Triangles with normals, and three pattern coordinates a corner. */
export interface Mesh {
  readonly parts: Part[];
  readonly positions: number[];
  readonly normals: number[];
  readonly coordinates: number[];
  readonly corners: number[];
  /** The part of each triangle. */
  readonly partOf: number[];
}

export function emptyMesh(): Mesh {
  return { parts: [], positions: [], normals: [], coordinates: [], corners: [], partOf: [] };
}

/** A sheet of points: rows × columns of positions and pattern coordinates. */
export interface Sheet {
  readonly rows: number;
  readonly columns: number;
  readonly points: readonly Vec3[];
  readonly coordinates: readonly Vec3[];
}

/** Adds a part and returns its number. */
export function addPart(mesh: Mesh, part: Part): number {
  mesh.parts.push(part);
  return mesh.parts.length - 1;
}

/** Adds a sheet as two triangles a cell, with smooth normals taken from the cells around each point. */
export function addSheet(mesh: Mesh, part: number, sheet: Sheet): void {
  const first = mesh.positions.length / 3;
  for (let index = 0; index < sheet.points.length; index++) {
    mesh.positions.push(...(sheet.points[index] as Vec3));
    mesh.coordinates.push(...(sheet.coordinates[index] as Vec3));
    mesh.normals.push(0, 0, 0);
  }
  const firstCorner = mesh.corners.length;
  for (let row = 0; row + 1 < sheet.rows; row++) {
    for (let column = 0; column + 1 < sheet.columns; column++) {
      const corner = first + row * sheet.columns + column;
      addTriangle(mesh, part, corner, corner + 1, corner + sheet.columns);
      addTriangle(mesh, part, corner + 1, corner + sheet.columns + 1, corner + sheet.columns);
    }
  }
  gatherNormals(mesh, first, firstCorner);
}

function addTriangle(mesh: Mesh, part: number, a: number, b: number, c: number): void {
  mesh.corners.push(a, b, c);
  mesh.partOf.push(part);
}

/** Area-weighted normals of the points from `first` on, out of the triangles from `firstCorner` on. */
function gatherNormals(mesh: Mesh, first: number, firstCorner: number): void {
  const { positions: p, normals: n, corners } = mesh;
  for (let corner = firstCorner; corner < corners.length; corner += 3) {
    const a = (corners[corner] as number) * 3;
    const b = (corners[corner + 1] as number) * 3;
    const c = (corners[corner + 2] as number) * 3;
    const ux = (p[b] as number) - (p[a] as number);
    const uy = (p[b + 1] as number) - (p[a + 1] as number);
    const uz = (p[b + 2] as number) - (p[a + 2] as number);
    const vx = (p[c] as number) - (p[a] as number);
    const vy = (p[c + 1] as number) - (p[a + 1] as number);
    const vz = (p[c + 2] as number) - (p[a + 2] as number);
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    for (const at of [a, b, c]) {
      n[at] = (n[at] as number) + nx;
      n[at + 1] = (n[at + 1] as number) + ny;
      n[at + 2] = (n[at + 2] as number) + nz;
    }
  }
  for (let at = first * 3; at < n.length; at += 3) {
    const size = Math.hypot(n[at] as number, n[at + 1] as number, n[at + 2] as number) || 1;
    n[at] = (n[at] as number) / size;
    n[at + 1] = (n[at + 1] as number) / size;
    n[at + 2] = (n[at + 2] as number) / size;
  }
}

/** Turns every point and normal about the upright axis, so that azimuth `turnDeg` comes to face the viewer. */
export function turnMesh(mesh: Mesh, turnDeg: number): void {
  const angle = (-turnDeg * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  for (const list of [mesh.positions, mesh.normals]) {
    for (let at = 0; at < list.length; at += 3) {
      const x = list[at] as number;
      const y = list[at + 1] as number;
      list[at] = x * cos - y * sin;
      list[at + 1] = x * sin + y * cos;
    }
  }
}
