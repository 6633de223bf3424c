import { addPart, addSheet, type Mesh } from '../geometry/mesh.ts';
import { seededChance } from '../geometry/seeded-random.ts';
import { along, cross, type Vec3 } from '../geometry/vector.ts';
import type { LeafLook } from './plant-spec.ts';

/** Where a blade sits and how it is turned: unit `forward` and `normal` are square to each other. */
export interface BladePlace {
  readonly joint: Vec3;
  readonly forward: Vec3;
  readonly normal: Vec3;
  readonly radiusMm: number;
  /** 0 just unfolding, 1 full grown. */
  readonly grown: number;
  readonly colour: Vec3;
  readonly shoot: number;
  readonly seed: number;
}

/** How finely surfaces are divided: fine for the photo, coarse for shadows. */
export type Detail = 'fine' | 'coarse';

/** Angle between two main veins; seven of them run from the leaf joint. */
export const VEIN_STEP_RAD = (42 * Math.PI) / 180;
/** The blade ends this far round on either side of the joint, leaving the notch open. */
const NOTCH_RAD = (168 * Math.PI) / 180;
const TEETH_PER_LOBE = 3;
const FINE_ROWS = [0, 0.24, 0.48, 0.7, 0.87, 1];
const COARSE_ROWS = [0, 0.6, 1];

/** Adds one rounded, lobed and toothed blade with palmate veins, cupped, pleated and rippled as leaves are. */
export function addLeafBlade(mesh: Mesh, place: BladePlace, look: LeafLook, detail: Detail): void {
  const chance = seededChance(place.seed);
  const part = addPart(mesh, {
    material: 'leaf',
    canopy: true,
    colour: place.colour,
    pattern: [look.zone * chance.between(0.75, 1.1, 1), place.grown],
    shoot: place.shoot,
    seed: place.seed,
  });
  const side = cross(place.forward, place.normal);
  const rows = detail === 'fine' ? FINE_ROWS : COARSE_ROWS;
  const columns = detail === 'fine' ? 64 : 19;
  const folded = 1 - place.grown;
  const cup = chance.between(0.06, 0.36, 2) + 0.55 * folded;
  const droop = chance.between(0.04, 0.4, 3) * place.grown;
  const fold = chance.between(-0.04, 0.14, 4) + 0.35 * folded;
  const wave = { size: look.ruffle * chance.between(0.6, 1.3, 5), phase: chance.between(0, 6.28, 6) };
  const slant = 0.07 * chance.normal(7);

  const points: Vec3[] = [];
  const coordinates: Vec3[] = [];
  for (const rho of rows) {
    for (let column = 0; column < columns; column++) {
      const theta = NOTCH_RAD * ((2 * column) / (columns - 1) - 1);
      const reach = rho * bladeOutline(theta, look, wave.phase);
      const x = reach * Math.sin(theta) * (1 + slant);
      const y = reach * Math.cos(theta);
      const ripple =
        wave.size *
        rho ** 2.2 *
        (Math.sin(4 * theta + wave.phase) + 0.6 * Math.sin(9 * theta + 2.3 * wave.phase));
      const pleat = 0.045 * rho * (0.4 + rho) * betweenVeins(theta);
      const z = cup * reach * reach + fold * Math.abs(x) - droop * y * Math.abs(y) + ripple + pleat;
      let point = along(place.joint, side, x * place.radiusMm);
      point = along(point, place.forward, y * place.radiusMm);
      points.push(along(point, place.normal, z * place.radiusMm));
      coordinates.push([x, y, rho]);
    }
  }
  addSheet(mesh, part, { rows: rows.length, columns, points, coordinates });
}

/** 0 on a main vein, 1 midway between two. */
function betweenVeins(theta: number): number {
  const fromVein = Math.abs(theta / VEIN_STEP_RAD - Math.round(theta / VEIN_STEP_RAD)) * 2;
  return Math.sin((fromVein * Math.PI) / 2);
}

/** Distance from the leaf joint to the margin in direction `theta`, as a share of the blade's radius. */
export function bladeOutline(theta: number, look: LeafLook, phase: number): number {
  const fromVein = Math.abs(theta / VEIN_STEP_RAD - Math.round(theta / VEIN_STEP_RAD)) * 2;
  const lobe = 1 - look.lobing * fromVein ** 1.8;
  const tooth =
    1 - look.toothing * (1 - Math.abs(Math.cos((theta / VEIN_STEP_RAD) * TEETH_PER_LOBE * Math.PI)) ** 0.6);
  const back = 1 - 0.27 * (Math.abs(theta) / Math.PI) ** 1.6;
  const lip = Math.min(1, (NOTCH_RAD - Math.abs(theta)) / 0.2);
  const uneven = 1 + 0.03 * Math.sin(3 * theta + phase);
  return lobe * tooth * back * uneven * (0.45 + 0.55 * Math.sqrt(lip));
}
