import type { Mesh } from '../geometry/mesh.ts';
import { seededChance } from '../geometry/seeded-random.ts';
import { add, cross, length, scale, subtract, turnAbout, UP, unit, type Vec3 } from '../geometry/vector.ts';

/** How limp a plant hangs. */
export interface DroopSpec {
  /** By how much leaf stalks sink towards straight down, radians; each a little more or less. */
  readonly leafRad: number;
  /** By how much the tips of shoots bend over, radians; less towards where they leave the old wood. */
  readonly shootRad: number;
  readonly seed: number;
}

const DOWN = scale(UP, -1);
const UNEVEN = 0.25;

/** Lets leaves hang from where their stalks leave the stem and bends shoots down, in place; each part keeps its size. */
export function droopPlant(mesh: Mesh, { leafRad, shootRad, seed }: DroopSpec): void {
  const chance = seededChance(seed);
  const pointsOf = pointsByPart(mesh);
  mesh.parts.forEach((blade, index) => {
    const stalk = mesh.parts[index - 1];
    const isStalked = blade.material === 'leaf' && stalk?.material === 'stem' && stalk.seed === blade.seed;
    if (!isStalked) return;
    const [stalkPoints, bladePoints] = [pointsOf[index - 1] ?? [], pointsOf[index] ?? []];
    const hinge = pointAt(mesh, stalkPoints[0] ?? 0);
    const out = subtract(middleOf(mesh, bladePoints), hinge);
    const sinksRad = leafRad * (1 + UNEVEN * Math.max(-2, Math.min(2, chance.normal(blade.seed))));
    turnDown(mesh, [...stalkPoints, ...bladePoints], hinge, out, sinksRad);
  });
  bendShoots(mesh, pointsOf, shootRad);
}

/** Bends each shoot with all it carries about where it leaves the old wood, its tip most. */
function bendShoots(mesh: Mesh, pointsOf: readonly (readonly number[])[], shootRad: number): void {
  const partsOf = new Map<number, number[]>();
  mesh.parts.forEach(({ shoot, canopy }, index) => {
    if (shoot >= 0 && canopy) partsOf.set(shoot, [...(partsOf.get(shoot) ?? []), index]);
  });
  for (const parts of partsOf.values()) {
    // A shoot's own stem is built before its leaves and flowers.
    const stem = pointsOf[parts[0] as number] ?? [];
    const hinge = pointAt(mesh, stem[0] ?? 0);
    const lengthMm = length(subtract(pointAt(mesh, stem.at(-1) ?? 0), hinge));
    for (const point of parts.flatMap((part) => pointsOf[part] ?? [])) {
      const out = subtract(pointAt(mesh, point), hinge);
      turnDown(mesh, [point], hinge, out, shootRad * Math.min(1.3, length(out) / Math.max(1, lengthMm)));
    }
  }
}

/** Turns points about a hinge so that a direction sinks by an angle, at most until it hangs straight down. */
function turnDown(mesh: Mesh, points: readonly number[], hinge: Vec3, out: Vec3, byRad: number): void {
  const axis = cross(out, DOWN);
  if (length(axis) < 1e-6 * length(out) || byRad <= 0) return;
  const toDown = Math.acos(Math.max(-1, Math.min(1, -unit(out)[2])));
  const rad = Math.min(byRad, toDown);
  for (const point of points) {
    const place = add(hinge, turnAbout(subtract(pointAt(mesh, point), hinge), unit(axis), rad));
    const normal = turnAbout(vectorAt(mesh.normals, point), unit(axis), rad);
    for (const [k, value] of place.entries()) mesh.positions[3 * point + k] = value;
    for (const [k, value] of normal.entries()) mesh.normals[3 * point + k] = value;
  }
}

function pointsByPart(mesh: Mesh): number[][] {
  const seen = new Set<number>();
  const byPart: number[][] = mesh.parts.map(() => []);
  mesh.corners.forEach((corner, index) => {
    if (seen.has(corner)) return;
    seen.add(corner);
    byPart[mesh.partOf[Math.floor(index / 3)] as number]?.push(corner);
  });
  return byPart.map((points) => points.sort((a, b) => a - b));
}

function pointAt({ positions }: Mesh, point: number): Vec3 {
  return vectorAt(positions, point);
}

function vectorAt(values: readonly number[], point: number): Vec3 {
  return [values[3 * point] as number, values[3 * point + 1] as number, values[3 * point + 2] as number];
}

function middleOf(mesh: Mesh, points: readonly number[]): Vec3 {
  const sum = points.reduce((total, point) => add(total, pointAt(mesh, point)), [0, 0, 0] as Vec3);
  return scale(sum, 1 / Math.max(1, points.length));
}
