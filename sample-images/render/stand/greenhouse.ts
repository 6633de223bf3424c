import { joined } from '../geometry/join-mesh.ts';
import { smoothStep } from '../geometry/keyframes.ts';
import { emptyMesh, type Mesh } from '../geometry/mesh.ts';
import { smoothNoise } from '../geometry/seeded-random.ts';
import { add, along, type Vec3 } from '../geometry/vector.ts';
import { type LightSpec, lampsOf } from '../light/lamps.ts';
import { meshBounds, shadowMap } from '../light/shadow-map.ts';
import { buildPlant } from '../plant/build-plant.ts';
import type { PlantSpec } from '../plant/plant-spec.ts';
import { type Pinhole, sightLine } from '../view/camera.ts';
import { blankPicture, blurPicture, type Picture } from '../view/picture.ts';
import { rasterise } from '../view/rasterise.ts';
import { shaderOf } from '../view/shade.ts';
import { addPot, type PotSpec } from './pot.ts';

/** Distance of the glass behind the plant, mm. */
const GLASS_MM = 1900;
/** How far out of focus things behind the bench are, as a share of the photo's width. */
const BLUR_SHARE = 0.0042;

interface Neighbour {
  readonly at: readonly [right: number, back: number];
  readonly radiusMm: number;
  readonly pot: PotSpec;
  readonly seed: number;
  readonly green: Vec3;
  readonly bloom: Vec3 | null;
}

const POT: PotSpec = {
  rimMm: 120,
  heightMm: 105,
  material: 'clay',
  colour: [0.34, 0.14, 0.07],
  mark: 'dot',
  labelDeg: null,
  seed: 2,
};
const BLACK: PotSpec = { ...POT, material: 'plastic', colour: [0.02, 0.02, 0.021], labelDeg: 20 };
const WHITE: PotSpec = { ...POT, material: 'plastic', colour: [0.6, 0.6, 0.57] };

const NEIGHBOURS: readonly Neighbour[] = [
  { at: [-360, 760], radiusMm: 125, pot: POT, seed: 301, green: [0.06, 0.13, 0.03], bloom: null },
  {
    at: [-95, 840],
    radiusMm: 105,
    pot: BLACK,
    seed: 302,
    green: [0.09, 0.14, 0.035],
    bloom: [0.6, 0.14, 0.3],
  },
  { at: [180, 780], radiusMm: 118, pot: WHITE, seed: 303, green: [0.05, 0.11, 0.035], bloom: null },
  {
    at: [430, 860],
    radiusMm: 130,
    pot: POT,
    seed: 304,
    green: [0.075, 0.14, 0.03],
    bloom: [0.62, 0.5, 0.52],
  },
  { at: [-560, 1150], radiusMm: 150, pot: BLACK, seed: 305, green: [0.05, 0.1, 0.03], bloom: null },
  { at: [20, 1250], radiusMm: 150, pot: POT, seed: 306, green: [0.07, 0.12, 0.05], bloom: [0.6, 0.1, 0.08] },
  { at: [640, 1200], radiusMm: 160, pot: POT, seed: 307, green: [0.06, 0.12, 0.03], bloom: null },
];

/** The inside of a greenhouse behind the bench: staging, other plants, glass and bars, all out of focus. */
export function greenhouseScenery(
  light: LightSpec,
  benchBelowRimMm: number,
): (camera: Pinhole, widthPx: number, heightPx: number) => Picture {
  const mesh = neighbours(benchBelowRimMm);
  const bounds = meshBounds(mesh);
  const maps = lampsOf(light).map((lamp) => shadowMap(mesh, lamp, bounds, 512));
  return (camera, widthPx, heightPx) => {
    const picture = blankPicture(widthPx, heightPx);
    const visible = rasterise(mesh, camera, widthPx, heightPx, 1);
    const shader = shaderOf(mesh, visible, camera, maps);
    for (let row = 0; row < heightPx; row++) {
      for (let column = 0; column < widthPx; column++) {
        const at = 3 * (row * widthPx + column);
        const seen = visible.triangle[row * widthPx + column] as number;
        picture.light.set(
          seen >= 0
            ? shader.triangle(seen, column + 0.5, row + 0.5)
            : glassLight(camera.eye, sightLine(camera, column + 0.5, row + 0.5), -benchBelowRimMm),
          at,
        );
      }
    }
    return blurPicture(picture, Math.max(0.8, widthPx * BLUR_SHARE));
  };
}

function neighbours(benchBelowRimMm: number): Mesh {
  let mesh = emptyMesh();
  for (const one of NEIGHBOURS) {
    const spec: PlantSpec = {
      seed: one.seed,
      radiusMm: [
        [-14, 30],
        [0, one.radiusMm],
      ],
      centreHeight: 0.6,
      lowestDeg: -30,
      shoots: 46,
      forks: 13,
      internodeMm: 12,
      leaf: {
        radiusMm: 28,
        lobing: 0.08,
        toothing: 0.04,
        ruffle: 0.06,
        zone: one.seed % 2,
        colour: one.green,
        youngColour: [0.15, 0.24, 0.05],
      },
      flower: one.bloom && {
        petalMm: 18,
        floretsPerTruss: 8,
        ruffle: 0.06,
        pedicel: 0.45,
        colour: one.bloom,
        blotch: [0.2, 0.02, 0.06],
        share: 0.5,
        stage: [[0, 2]],
      },
      leanMm: [[0, 0]],
      leanAzimuthDeg: 0,
      longShoots: [],
      deepStop: null,
    };
    const grown = buildPlant(spec, 0, [], 'coarse').mesh;
    addPot(grown, one.pot);
    const shift: Vec3 = [one.at[0], one.at[1], one.pot.heightMm - benchBelowRimMm];
    for (let at = 0; at < grown.positions.length; at += 3) {
      const [x, y, z] = grown.positions.slice(at, at + 3) as [number, number, number];
      [grown.positions[at], grown.positions[at + 1], grown.positions[at + 2]] = add([x, y, z], shift);
    }
    mesh = joined(mesh, grown);
  }
  return mesh;
}

/** Light from staging, panes, bars and the dim growth outside, where no neighbour stands. */
function glassLight(eye: Vec3, sight: Vec3, benchMm: number): Vec3 {
  const [x, y, z] = along(eye, sight, (GLASS_MM - eye[1]) / sight[1]);
  if (z < benchMm) {
    const floor = along(eye, sight, (benchMm - eye[2]) / sight[2]);
    const slat = smoothStep(0.06, 0.1, Math.abs((floor[1] / 85) % 1));
    const shade = (0.25 + 0.1 * smoothNoise(floor[0] / 80, floor[1] / 20, 3)) * (0.2 + 0.8 * slat);
    return [shade * 0.8, shade * 0.74, shade * 0.62];
  }
  const upright = Math.abs(x / 610 - Math.round(x / 610)) * 610;
  const level = Math.abs((z - 480) / 900 - Math.round((z - 480) / 900)) * 900;
  const wall = z < 30;
  if (wall) {
    const brick = 0.2 + 0.05 * smoothNoise(x / 110, z / 36, 4) + 0.03 * smoothNoise(x / 12, z / 12, 5);
    return [brick * 1.25, brick * 0.95, brick * 0.8];
  }
  if (upright < 26 || level < 20 || z < 75) return y > 0 ? [0.5, 0.5, 0.48] : [0, 0, 0];
  const hedge = smoothStep(
    -60,
    60,
    330 + 130 * smoothNoise(x / 240, 1, 6) + 60 * smoothNoise(x / 70, z / 70, 7) - z,
  );
  const sky = 0.95 + 0.12 * smoothNoise(x / 700, z / 300, 8);
  const leafy = 0.2 + 0.1 * smoothNoise(x / 45, z / 45, 9);
  return [
    sky * (1 - hedge) + leafy * 0.75 * hedge,
    sky * 1.01 * (1 - hedge) + leafy * 1.05 * hedge,
    sky * 1.03 * (1 - hedge) + leafy * 0.5 * hedge,
  ];
}
