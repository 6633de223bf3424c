import { joined } from './geometry/join-mesh.ts';
import { emptyMesh, type Mesh, turnMesh } from './geometry/mesh.ts';
import { type BuiltPlant, buildPlant } from './plant/build-plant.ts';
import { type DroopSpec, droopPlant } from './plant/droop.ts';
import type { Cut, PlantSpec } from './plant/plant-spec.ts';
import { type ShootInView, shootsInView } from './shoots-in-view.ts';
import { addPot, type PotSpec } from './stand/pot.ts';
import { type StemTruth, truthOf, type ViewTruth } from './truth.ts';
import { type CameraSpec, type Pinhole, pinhole } from './view/camera.ts';
import { rasterise, type Visible } from './view/rasterise.ts';

export interface SilhouetteOptions {
  readonly plant: PlantSpec;
  readonly pot: PotSpec;
  readonly week: number;
  readonly cuts: readonly Cut[];
  readonly camera: CameraSpec;
  readonly widthPx: number;
  readonly heightPx: number;
  /** The plant gone limp; firm without. */
  readonly droop?: DroopSpec;
}

/** What is known of the plant whatever its turn. */
export type PlantTruth = Omit<ViewTruth, 'turnDeg' | 'stems' | 'canopy'> & {
  readonly stems: readonly Omit<StemTruth, 'tipPx'>[];
};

export interface RenderedSilhouette {
  readonly turnDeg: number;
  /** One byte a px: 1 where at least half of the px is canopy. */
  readonly canopy: { readonly width: number; readonly height: number; readonly data: Uint8Array };
  readonly truth: PlantTruth;
  /** How the photo shows the long shoots, and those of the others that stand out; empty without a ball. */
  readonly longShoots: readonly ShootInView[];
  readonly otherShoots: readonly ShootInView[];
}

const PER_SIDE = 2;
/** Shoots that stand out by less are of no interest. */
const STANDS_OUT_MM = 10;

/** The exact canopy masks of photos at several turns with their truth, without light and colour: a tenth of the work. Pure. */
export function renderSilhouettes(
  options: SilhouetteOptions,
  turnsDeg: readonly number[],
): RenderedSilhouette[] {
  const { plant, pot, week, cuts, widthPx, heightPx } = options;
  const built = buildPlant(plant, week, cuts, 'fine');
  if (options.droop !== undefined) droopPlant(built.mesh, options.droop);
  const scene = joined(built.mesh, potMesh(pot));
  const camera = pinhole(options.camera, widthPx, heightPx);
  const truth = plantTruth(built, options, camera);
  const { ball } = truth;
  const shown = (long: boolean, turnDeg: number) =>
    ball === null
      ? []
      : shootsInView(
          built.mesh,
          truth.stems
            .filter((stem) => stem.long === long && (long || stem.excessMm > STANDS_OUT_MM))
            .map(({ shoot }) => shoot),
          { turnDeg, camera, mmPerPx: truth.mmPerPx, ball },
        );
  let standsAtDeg = 0;
  return turnsDeg.map((turnDeg) => {
    turnMesh(scene, turnDeg - standsAtDeg);
    standsAtDeg = turnDeg;
    const data = canopyOf(scene, rasterise(scene, camera, widthPx, heightPx, PER_SIDE));
    return {
      turnDeg,
      canopy: { width: widthPx, height: heightPx, data },
      truth,
      longShoots: shown(true, turnDeg),
      otherShoots: shown(false, turnDeg),
    };
  });
}

function plantTruth(built: BuiltPlant, options: SilhouetteOptions, camera: Pinhole): PlantTruth {
  const {
    turnDeg: _turn,
    canopy: _canopy,
    stems,
    ...truth
  } = truthOf(built, {
    seed: options.plant.seed,
    turnDeg: 0,
    rimMm: options.pot.rimMm,
    camera: options.camera,
    pinhole: camera,
    canopyPx: 0,
  });
  return { ...truth, stems: stems.map(({ tipPx: _tip, ...stem }) => stem) };
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
