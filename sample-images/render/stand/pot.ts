import { addPart, addSheet, type Material, type Mesh } from '../geometry/mesh.ts';
import { smoothNoise } from '../geometry/seeded-random.ts';
import { along, azimuthDirection, type Vec3 } from '../geometry/vector.ts';
import { SOIL_DEPTH_MM } from '../plant/skeleton.ts';
import { addCollar, type CollarSpec } from './collar.ts';

export interface PotSpec {
  /** Outer diameter of the rim. */
  readonly rimMm: number;
  readonly heightMm: number;
  readonly material: 'clay' | 'plastic';
  readonly colour: Vec3;
  /** The mark at azimuth 0: a dot of paint on the rim's band, or a stick pushed in beside the rim. */
  readonly mark: 'dot' | 'stick';
  /** Azimuth of a plant label, or null for none. */
  readonly labelDeg: number | null;
  readonly seed: number;
  /** A printed turn collar round the pot; none without. */
  readonly collar?: CollarSpec;
}

/** Adds the pot with a real rim, its soil, its mark and, if wanted, a label; rim plane at 0, mark at azimuth 0. */
export function addPot(mesh: Mesh, pot: PotSpec): void {
  const rim = pot.rimMm / 2;
  const clay = pot.material === 'clay';
  const wall = clay ? 6 : 2.2;
  const band = clay ? pot.rimMm * 0.19 : pot.rimMm * 0.09;
  const overhang = clay ? 3.4 : 2.2;
  const foot = rim * 0.68;
  const height = pot.heightMm;
  const shoulder = rim - overhang - (rim - overhang - foot) * (band / height);
  addLathe(mesh, pot, [
    [0, -height],
    [foot - 2, -height],
    [foot, -height + 2],
    [shoulder, -band - 0.4],
    [shoulder + 0.3, -band],
    [rim - 2.2, -band + 0.6],
    [rim - 1.4, -band + 1.6],
    [rim - 0.25, -2],
    [rim, -0.9],
    [rim - 0.3, -0.25],
    [rim - 0.9, 0],
    [rim - wall + 0.8, 0],
    [rim - wall, -0.8],
    [rim - wall - 1, -SOIL_DEPTH_MM - 6],
  ]);
  addSoil(mesh, rim - wall - 0.6, pot.seed);
  if (pot.mark === 'stick')
    addStrip(mesh, azimuthDirection(0), rim - wall - 2.5, [-18, 25], 6, 'mark', pot.seed);
  if (pot.labelDeg !== null) {
    addStrip(mesh, azimuthDirection(pot.labelDeg), rim - wall - 7, [-22, 42], 15, 'label', pot.seed);
  }
  if (pot.collar !== undefined) addCollar(mesh, pot.collar);
}

/** Turns a profile of [radius, height] about the axis. Each stretch keeps its own edge, so corners stay sharp. */
function addLathe(mesh: Mesh, pot: PotSpec, profile: readonly (readonly [number, number])[]): void {
  const part = addPart(mesh, {
    material: pot.material,
    canopy: false,
    colour: pot.colour,
    pattern: [pot.mark === 'dot' ? 1 : 0, pot.rimMm],
    shoot: -1,
    seed: pot.seed,
  });
  const columns = 145;
  for (let row = 0; row + 1 < profile.length; row++) {
    const points: Vec3[] = [];
    const coordinates: Vec3[] = [];
    for (const [radius, height] of [profile[row + 1], profile[row]] as [number, number][]) {
      for (let column = 0; column < columns; column++) {
        const azimuth = (360 * column) / (columns - 1);
        points.push(along(scaleDirection(azimuth, radius), [0, 0, 1], height));
        coordinates.push([azimuth, height, radius]);
      }
    }
    addSheet(mesh, part, { rows: 2, columns, points, coordinates });
  }
}

function scaleDirection(azimuthDeg: number, radius: number): Vec3 {
  const direction = azimuthDirection(azimuthDeg);
  return [direction[0] * radius, direction[1] * radius, 0];
}

/** Adds a crumbly disc of soil below the rim. */
function addSoil(mesh: Mesh, radiusMm: number, seed: number): void {
  const part = addPart(mesh, {
    material: 'soil',
    canopy: false,
    colour: [0.05, 0.033, 0.022],
    pattern: [],
    shoot: -1,
    seed,
  });
  const rows = 26;
  const columns = 90;
  const points: Vec3[] = [];
  const coordinates: Vec3[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const at = scaleDirection((360 * column) / (columns - 1), (radiusMm * (rows - 1 - row)) / (rows - 1));
      const crumbs =
        1.6 * smoothNoise(at[0] / 5, at[1] / 5, seed) + 1.1 * smoothNoise(at[0] / 2, at[1] / 2, seed + 1);
      points.push([at[0], at[1], -SOIL_DEPTH_MM + crumbs]);
      coordinates.push([at[0], at[1], 0]);
    }
  }
  addSheet(mesh, part, { rows, columns, points, coordinates });
}

/** Adds an upright flat strip (a stick or a label) that faces outward at a distance from the axis. */
function addStrip(
  mesh: Mesh,
  direction: Vec3,
  distanceMm: number,
  [bottomMm, topMm]: readonly [number, number],
  widthMm: number,
  material: Material,
  seed: number,
): void {
  const part = addPart(mesh, {
    material,
    canopy: false,
    colour: [0.74, 0.73, 0.68],
    pattern: [],
    shoot: -1,
    seed,
  });
  const side: Vec3 = [-direction[1], direction[0], 0];
  const points: Vec3[] = [];
  const coordinates: Vec3[] = [];
  for (const share of [1, 0.93, 0]) {
    for (const across of [-0.5, 0.5]) {
      const width = widthMm * (share === 1 ? 0.72 : 1);
      const heightMm = bottomMm + (topMm - bottomMm) * share;
      const out = distanceMm + 0.12 * Math.max(0, heightMm);
      points.push(along([direction[0] * out, direction[1] * out, heightMm], side, across * width));
      coordinates.push([across, share, 0]);
    }
  }
  addSheet(mesh, part, { rows: 3, columns: 2, points, coordinates });
}
