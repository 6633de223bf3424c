import { smoothStep } from '../geometry/keyframes.ts';
import { addPart, addSheet, type Mesh } from '../geometry/mesh.ts';
import { type Chance, seededChance } from '../geometry/seeded-random.ts';
import {
  add,
  along,
  blend,
  cross,
  evenDirections,
  scale,
  squareTo,
  turnAbout,
  UP,
  unit,
  type Vec3,
} from '../geometry/vector.ts';
import { pointAlong, smoothCurve } from './curve.ts';
import type { Detail } from './leaf-blade.ts';
import type { FlowerLook } from './plant-spec.ts';
import { addStemTube } from './stem-tube.ts';

export interface TrussPlace {
  /** Where the flower stalk leaves the shoot, and the unit direction that it takes. */
  readonly base: Vec3;
  readonly direction: Vec3;
  /** 0 green buds, 1 buds coloured, 2 all open. */
  readonly stage: number;
  readonly shoot: number;
  readonly seed: number;
}

const STALK_COLOUR: Vec3 = [0.12, 0.2, 0.06];
/** Directions of the five petals round the flower, degrees from its top: two above, three below. */
const PETAL_TURNS_DEG = [-38, 38, -105, 105, 180];

/** Adds a flower head: a stalk, and buds or open flowers on short stalks in a loose half ball. */
export function addTruss(mesh: Mesh, place: TrussPlace, look: FlowerLook, detail: Detail): void {
  const chance = seededChance(place.seed);
  const formed = smoothStep(-0.3, 1.3, place.stage);
  const stalkMm = look.petalMm * (0.9 + 1.3 * formed);
  const top = along(place.base, place.direction, stalkMm);
  addStalk(mesh, place, place.base, place.direction, top, 1.3, detail);
  const heads = evenDirections(Math.round(look.floretsPerTruss * 1.7), chance.between(0, 6.28, 1));
  for (let floret = 0; floret < look.floretsPerTruss; floret++) {
    const spread = turnToward(heads[floret] as Vec3, place.direction);
    const seed = place.seed * 31 + floret;
    const opening = smoothStep(0.55, 1, place.stage - 0.75 * chance.uniform(2, floret));
    const away = blend([spread, 1], [place.direction, 0.35 + 0.5 * opening], [UP, 0.1]);
    const pedicelMm = look.petalMm * (0.3 + look.pedicel * formed) * chance.between(0.85, 1.15, 3, floret);
    const nod = blend([away, 1], [UP, -0.9 * (1 - opening) * formed]);
    const end = along(top, nod, pedicelMm);
    addStalk(mesh, place, top, away, end, 0.65, detail);
    if (opening < 0.05) addBud(mesh, end, nod, 0.35 + 0.65 * formed, { ...place, seed }, look, detail);
    else addFloret(mesh, end, blend([away, 1], [UP, 0.15]), opening, { ...place, seed }, look, detail);
  }
}

function addStalk(
  mesh: Mesh,
  place: TrussPlace,
  from: Vec3,
  leaving: Vec3,
  to: Vec3,
  radiusMm: number,
  detail: Detail,
): void {
  const curve = smoothCurve(from, leaving, to, unit(add(to, scale(from, -1))));
  const points = [0, 0.25, 0.5, 0.75, 1].map((share) => pointAlong(curve, curve.lengthMm * share).point);
  addStemTube(
    mesh,
    {
      points,
      baseRadiusMm: radiusMm,
      tipRadiusMm: radiusMm * 0.85,
      colour: STALK_COLOUR,
      jointShares: [],
      shoot: place.shoot,
      seed: place.seed,
    },
    detail,
  );
}

/** A closed bud: a slim spindle, green at the foot and in the flower's colour at the tip. */
function addBud(
  mesh: Mesh,
  base: Vec3,
  direction: Vec3,
  size: number,
  place: TrussPlace,
  look: FlowerLook,
  detail: Detail,
): void {
  const part = addPart(mesh, {
    material: 'bud',
    canopy: true,
    colour: look.colour,
    pattern: [smoothStep(0.3, 1.1, place.stage)],
    shoot: place.shoot,
    seed: place.seed,
  });
  const lengthMm = look.petalMm * 0.62 * size;
  const columns = detail === 'fine' ? 9 : 5;
  const rows = detail === 'fine' ? 7 : 4;
  const side = squareTo([1, 0, 0], direction);
  const other = cross(direction, side);
  const points: Vec3[] = [];
  const coordinates: Vec3[] = [];
  for (let row = 0; row < rows; row++) {
    const share = row / (rows - 1);
    const radius = lengthMm * 0.24 * Math.sin(Math.PI * (0.06 + 0.92 * share ** 0.8));
    for (let column = 0; column < columns; column++) {
      const angle = (-2 * Math.PI * column) / (columns - 1);
      const middle = along(base, direction, lengthMm * share);
      points.push(along(along(middle, side, radius * Math.cos(angle)), other, radius * Math.sin(angle)));
      coordinates.push([column / (columns - 1), share, 0]);
    }
  }
  addSheet(mesh, part, { rows, columns, points, coordinates });
}

/** An open flower that faces `facing`: five broad overlapping petals, the upper two marked. */
function addFloret(
  mesh: Mesh,
  base: Vec3,
  facing: Vec3,
  opening: number,
  place: TrussPlace,
  look: FlowerLook,
  detail: Detail,
): void {
  const chance = seededChance(place.seed);
  const top = squareTo(blend([UP, 1], [facing, 0.05]), facing);
  PETAL_TURNS_DEG.forEach((turnDeg, petal) => {
    const outward = turnAbout(top, facing, (turnDeg * Math.PI) / 180 + 0.09 * chance.normal(1, petal));
    addPetal(mesh, base, outward, facing, opening, petal < 2, chance, petal, place, look, detail);
  });
}

function addPetal(
  mesh: Mesh,
  base: Vec3,
  outward: Vec3,
  facing: Vec3,
  opening: number,
  upper: boolean,
  chance: Chance,
  petal: number,
  place: TrussPlace,
  look: FlowerLook,
  detail: Detail,
): void {
  const tone = chance.between(0.88, 1.08, 2, petal);
  const part = addPart(mesh, {
    material: 'petal',
    canopy: true,
    colour: scale(look.colour, tone),
    pattern: [upper ? 1 : chance.between(0.12, 0.32, 3, petal), ...look.blotch],
    shoot: place.shoot,
    seed: place.seed * 5 + petal,
  });
  const [rows, columns] = detail === 'fine' ? [8, 9] : [4, 5];
  const lengthMm = look.petalMm * (upper ? 1.06 : 0.98) * (0.55 + 0.45 * opening);
  const widthMm = look.petalMm * (upper ? 0.98 : 0.84) * (0.45 + 0.55 * opening);
  const side = cross(outward, facing);
  const lift = 0.16 + 1.04 * (1 - opening);
  const phase = chance.between(0, 6.28, 4, petal);
  const points: Vec3[] = [];
  const coordinates: Vec3[] = [];
  for (let row = 0; row < rows; row++) {
    const t = row / (rows - 1);
    for (let column = 0; column < columns; column++) {
      const s = (2 * column) / (columns - 1) - 1;
      const half = 0.5 * widthMm * Math.sin(Math.PI * (0.05 + 0.63 * t ** 0.85));
      const round = 1 - 0.2 * s * s * t;
      const ruffle = look.ruffle * t * t * (Math.sin(5 * s + phase) + 0.6 * Math.sin(11 * s + 2 * phase));
      const height =
        lengthMm * (lift * t * (1 - 0.62 * t * opening) + 0.12 * s * s * t + ruffle) + petal * 0.12;
      let point = along(base, outward, lengthMm * t * round * (0.5 + 0.5 * opening));
      point = along(point, side, half * s);
      points.push(along(point, facing, height));
      coordinates.push([s, t, 0]);
    }
  }
  addSheet(mesh, part, { rows, columns, points, coordinates });
}

/** Carries a direction given about "up" over to the same place about `axis`. */
function turnToward(direction: Vec3, axis: Vec3): Vec3 {
  const side = squareTo([1, 0, 0], axis);
  const other = cross(axis, side);
  return along(add(scale(side, direction[0]), scale(other, direction[1])), axis, direction[2]);
}
