import { joined } from './geometry/join-mesh.ts';
import { emptyMesh, type Mesh, turnMesh } from './geometry/mesh.ts';
import { buildPlant } from './plant/build-plant.ts';
import type { Cut, PlantSpec } from './plant/plant-spec.ts';
import { type ShootInView, shootsInView } from './shoots-in-view.ts';
import { addPot, type PotSpec } from './stand/pot.ts';
import { truthOf, type ViewTruth } from './truth.ts';
import { type CameraSpec, pinhole } from './view/camera.ts';
import { rasterise, type Visible } from './view/rasterise.ts';

export interface SilhouetteOptions {
  readonly plant: PlantSpec;
  readonly pot: PotSpec;
  readonly week: number;
  readonly cuts: readonly Cut[];
  readonly camera: CameraSpec;
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface RenderedSilhouette {
  /** One byte a px: 1 where at least half of the px is canopy. */
  readonly canopy: { readonly width: number; readonly height: number; readonly data: Uint8Array };
  readonly truth: ViewTruth;
  /** How the photo shows the long shoots; empty without a ball. */
  readonly longShoots: readonly ShootInView[];
}

const PER_SIDE = 2;

/** The exact canopy masks of photos at several turns with their truth, without light and colour: a tenth of the work. Pure. */
export function renderSilhouettes(
  options: SilhouetteOptions,
  turnsDeg: readonly number[],
): RenderedSilhouette[] {
  const { plant, pot, week, cuts, widthPx, heightPx } = options;
  const built = buildPlant(plant, week, cuts, 'fine');
  const scene = joined(built.mesh, potMesh(pot));
  const camera = pinhole(options.camera, widthPx, heightPx);
  let standsAtDeg = 0;
  return turnsDeg.map((turnDeg) => {
    turnMesh(scene, turnDeg - standsAtDeg);
    standsAtDeg = turnDeg;
    const data = canopyOf(scene, rasterise(scene, camera, widthPx, heightPx, PER_SIDE));
    const truth = truthOf(built, {
      seed: plant.seed,
      turnDeg,
      rimMm: pot.rimMm,
      camera: options.camera,
      pinhole: camera,
      canopyPx: data.reduce((sum, inside) => sum + inside, 0),
    });
    const long = built.tips.filter((tip) => tip.long).map((tip) => tip.shoot);
    const longShoots =
      truth.ball === null
        ? []
        : shootsInView(built.mesh, long, { turnDeg, camera, mmPerPx: truth.mmPerPx, ball: truth.ball });
    return { canopy: { width: widthPx, height: heightPx, data }, truth, longShoots };
  });
}

function canopyOf(scene: Mesh, { widthPx, heightPx, perSide, triangle }: Visible): Uint8Array {
  const samples = new Uint8Array(widthPx * heightPx);
  const canopyTriangle = Uint8Array.from(scene.partOf, (part) => (scene.parts[part]?.canopy ? 1 : 0));
  for (let at = 0; at < triangle.length; at++) {
    const seen = triangle[at] as number;
    if (seen < 0 || canopyTriangle[seen] === 0) continue;
    const column = Math.floor((at % (widthPx * perSide)) / perSide);
    const row = Math.floor(at / (widthPx * perSide) / perSide);
    samples[row * widthPx + column] = (samples[row * widthPx + column] as number) + 1;
  }
  return samples.map((count) => (2 * count >= perSide * perSide ? 1 : 0));
}

function potMesh(pot: PotSpec): Mesh {
  const mesh = emptyMesh();
  addPot(mesh, pot);
  return mesh;
}
