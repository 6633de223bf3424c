import { joined } from './geometry/join-mesh.ts';
import { valueAt } from './geometry/keyframes.ts';
import { addPart, emptyMesh, type Mesh, turnMesh } from './geometry/mesh.ts';
import { type LightSpec, lampsOf } from './light/lamps.ts';
import { meshBounds, type ShadowMap, shadowMap } from './light/shadow-map.ts';
import { type AilingSpec, ailLeaves } from './plant/ailing-leaves.ts';
import { type BuiltPlant, buildPlant } from './plant/build-plant.ts';
import { type DroopSpec, droopPlant } from './plant/droop.ts';
import { addHangingLeaves, type HangingSpec } from './plant/hanging-leaves.ts';
import type { Detail } from './plant/leaf-blade.ts';
import type { Cut, PlantSpec } from './plant/plant-spec.ts';
import { type SwaySpec, swayPlant } from './plant/sway.ts';
import type { BackdropSpec } from './stand/backdrop.ts';
import { addPot, type PotSpec } from './stand/pot.ts';
import { truthOf, type ViewTruth } from './truth.ts';
import { backgroundPicture } from './view/background.ts';
import { type CameraSpec, type Pinhole, pinhole } from './view/camera.ts';
import { developPhoto, type FinishSpec } from './view/finish.ts';
import type { Picture } from './view/picture.ts';
import { rasterise, type Visible } from './view/rasterise.ts';
import { type Shader, shaderOf } from './view/shade.ts';

export interface ViewOptions {
  readonly plant: PlantSpec;
  readonly pot: PotSpec;
  /** Weeks from the plant's first sitting. */
  readonly week: number;
  readonly cuts: readonly Cut[];
  /** Azimuth that faces the camera. */
  readonly turnDeg: number;
  readonly camera: CameraSpec;
  readonly light: LightSpec;
  readonly backdrop: BackdropSpec;
  /** Light from behind the stand's bench, in place of the backdrop's cloth: for a busy place. */
  readonly scenery: ((camera: Pinhole, widthPx: number, heightPx: number) => Picture) | null;
  readonly finish: FinishSpec;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Samples per px along each side, 1 to 4. */
  readonly samplesPerSide: number;
  /** The plant a little moved; stands still without. */
  readonly sway?: SwaySpec;
  /** Leaves that hang over the pot's rim; none without. */
  readonly hanging?: HangingSpec;
  /** The plant gone limp; firm without. */
  readonly droop?: DroopSpec;
  /** Leaves that have turned yellow or brown; none without. */
  readonly ailing?: AilingSpec;
}

export interface RenderedView {
  /** 8-bit sRGB, three bytes a px. */
  readonly raster: { readonly width: number; readonly height: number; readonly data: Uint8Array };
  /** One byte a px: 1 where at least half of the px is canopy. */
  readonly canopy: { readonly width: number; readonly height: number; readonly data: Uint8Array };
  readonly truth: ViewTruth;
}

/** Side of a shadow map for a full photo; smaller photos need fewer cells. */
const SHADOW_CELLS = 512;
const FULL_SIDE_PX = 1600;
const FEWEST_SHADOW_CELLS = 192;

/** Renders one photo of a plant of known shape, with its exact canopy mask and its truth. Pure. */
export function renderView(options: ViewOptions): RenderedView {
  const { widthPx, heightPx, plant, turnDeg, pot } = options;
  const camera = pinhole(options.camera, widthPx, heightPx);
  const built = standingPlant(options, 'fine');
  const scene = joined(built.mesh, potMesh(pot));
  turnMesh(scene, turnDeg);
  const caster = standingScene(options, 'coarse');
  const maps = shadowMaps(caster, options);
  const visible = rasterise(scene, camera, widthPx, heightPx, options.samplesPerSide);
  const shader = shaderOf(scene, visible, camera, maps);
  const picture = backgroundPicture({ ...options, benchMm: -options.pot.heightMm }, camera, shader);
  const canopy = paintScene(picture, scene, visible, shader);
  const data = developPhoto(picture, options.finish);
  const canopyPx = canopy.reduce((sum, inside) => sum + inside, 0);
  const truth = truthOf(built, {
    seed: plant.seed,
    turnDeg,
    rimMm: pot.rimMm,
    camera: options.camera,
    pinhole: camera,
    canopyPx,
  });
  return {
    raster: { width: widthPx, height: heightPx, data },
    canopy: { width: widthPx, height: heightPx, data: canopy },
    truth,
  };
}

/** Plant and pot as they stand before the camera, turned. */
export function standingScene(options: ViewOptions, detail: Detail): Mesh {
  const scene = joined(standingPlant(options, detail).mesh, potMesh(options.pot));
  turnMesh(scene, options.turnDeg);
  return scene;
}

function standingPlant(options: ViewOptions, detail: Detail): BuiltPlant {
  const { plant, pot, week, cuts, sway, hanging, droop, ailing } = options;
  const built = buildPlant(plant, week, cuts, detail);
  if (droop !== undefined) droopPlant(built.mesh, droop);
  if (hanging !== undefined) addHangingLeaves(built.mesh, hanging, pot.rimMm, plant.leaf, detail);
  if (sway !== undefined) swayPlant(built.mesh, valueAt(plant.radiusMm, week), sway);
  if (ailing !== undefined) ailLeaves(built.mesh, ailing);
  return built;
}

/** Renders the stand with nothing on it. */
export function renderEmptyStand(options: ViewOptions): RenderedView['raster'] {
  const camera = pinhole(options.camera, options.widthPx, options.heightPx);
  const nothing = emptyMesh();
  addPart(nothing, { material: 'pale', canopy: false, colour: [0, 0, 0], pattern: [], shoot: -1, seed: 0 });
  nothing.positions.push(0, 0, -options.pot.heightMm);
  const shader = shaderOf(nothing, null, camera, shadowMaps(nothing, options));
  const picture = backgroundPicture({ ...options, benchMm: -options.pot.heightMm }, camera, shader);
  return {
    width: options.widthPx,
    height: options.heightPx,
    data: developPhoto(picture, options.finish),
  };
}

function potMesh(pot: PotSpec): Mesh {
  const mesh = emptyMesh();
  addPot(mesh, pot);
  return mesh;
}

function shadowMaps(caster: Mesh, { light, widthPx, heightPx }: ViewOptions): ShadowMap[] {
  const bounds = meshBounds(caster);
  const share = Math.min(1, Math.max(widthPx, heightPx) / FULL_SIDE_PX);
  const cells = Math.max(FEWEST_SHADOW_CELLS, Math.round(SHADOW_CELLS * share));
  return lampsOf(light).map((lamp) =>
    shadowMap(caster, lamp, bounds, lamp.key ? cells : Math.ceil(cells / 2)),
  );
}

/** Lays the lit scene over the background by coverage, and returns the canopy's exact mask. */
function paintScene(picture: Picture, scene: Mesh, visible: Visible, shader: Shader): Uint8Array {
  const { widthPx, heightPx, light } = picture;
  const { perSide, triangle } = visible;
  const canopy = new Uint8Array(widthPx * heightPx);
  const samples = perSide * perSide;
  const groups = {
    triangle: new Int32Array(samples),
    x: new Float64Array(samples),
    y: new Float64Array(samples),
    count: new Int32Array(samples),
  };
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      let used = 0;
      let covered = 0;
      let canopySamples = 0;
      for (let sample = 0; sample < samples; sample++) {
        const x = column * perSide + (sample % perSide);
        const y = row * perSide + Math.floor(sample / perSide);
        const seen = triangle[y * widthPx * perSide + x] as number;
        if (seen < 0) continue;
        covered++;
        if (scene.parts[scene.partOf[seen] as number]?.canopy) canopySamples++;
        let group = 0;
        while (group < used && groups.triangle[group] !== seen) group++;
        if (group === used) {
          groups.triangle[used] = seen;
          groups.x[used] = groups.y[used] = groups.count[used] = 0;
          used++;
        }
        groups.x[group] = (groups.x[group] as number) + x + 0.5;
        groups.y[group] = (groups.y[group] as number) + y + 0.5;
        groups.count[group] = (groups.count[group] as number) + 1;
      }
      if (used === 0) continue;
      if (2 * canopySamples >= samples) canopy[row * widthPx + column] = 1;
      const at = 3 * (row * widthPx + column);
      const rest = 1 - covered / samples;
      for (let band = 0; band < 3; band++) light[at + band] = (light[at + band] as number) * rest;
      for (let group = 0; group < used; group++) {
        const count = groups.count[group] as number;
        const radiance = shader.triangle(
          groups.triangle[group] as number,
          (groups.x[group] as number) / count,
          (groups.y[group] as number) / count,
        );
        for (let band = 0; band < 3; band++) {
          light[at + band] = (light[at + band] as number) + ((radiance[band] as number) * count) / samples;
        }
      }
    }
  }
  return canopy;
}
